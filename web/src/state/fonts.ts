// The fonts of the papers: large, so they are fetched from the page's own
// origin once a paper is wanted, and handed to the engine, which keeps them.
import heavy from '@expo-google-fonts/noto-sans/600SemiBold/NotoSans_600SemiBold.ttf?url';
import plain from '@expo-google-fonts/noto-sans/400Regular/NotoSans_400Regular.ttf?url';
import japanese from '@expo-google-fonts/noto-sans-jp/400Regular/NotoSansJP_400Regular.ttf?url';
import { atHand } from './desk';

const FONTS = [
  { name: 'NotoSans', strong: false, url: plain },
  { name: 'NotoSans', strong: true, url: heavy },
  { name: 'NotoSansJP', strong: false, url: japanese },
];

/** Sees to it that the engine has every font; to be called before a call that
 * sets text on paper. An engine that was started again asks for them again. */
export async function withFonts(signal?: AbortSignal): Promise<void> {
  const engine = atHand.value;
  if (!engine) throw new Error('The engine is not there yet.');
  const ask = (place: number) => ({ name: FONTS[place]?.name ?? '', strong: FONTS[place]?.strong ?? false, place });
  const { places } = (await engine.call('font', ask(0))).answer;
  const lacking = FONTS.map((_, place) => place).filter((place) => !places.includes(place));
  await Promise.all(
    lacking.map(async (place) => {
      const bytes = await fetched(FONTS[place]?.url ?? '', signal);
      await engine.call('font', ask(place), { bytes });
    }),
  );
}

async function fetched(url: string, signal?: AbortSignal): Promise<Uint8Array<ArrayBuffer>> {
  const answer = await fetch(url, signal ? { signal } : {});
  if (!answer.ok) throw new Error(`A font of the papers could not be fetched (${answer.status}). Try again while you are online.`);
  return new Uint8Array(await answer.arrayBuffer());
}
