import { computed } from '@preact/signals';
import { hello } from './store';

/** Sizes a pin may have, mm, as the engine says; it is asked before there is a pin to size. */
export const bounds = computed(() => ({ least: hello.value?.leastSize ?? 0, most: hello.value?.greatestSize ?? Infinity }));
