import { firefox } from '../driver/firefox.mjs';
import { smoke } from './smoke.mjs';

smoke('Firefox', firefox);
