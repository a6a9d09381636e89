import { webkit } from '../driver/webkit.mjs';
import { smoke } from './smoke.mjs';

smoke('WebKitGTK', webkit);
