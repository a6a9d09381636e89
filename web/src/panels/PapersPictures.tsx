// The pictures a pin is shown and sold with.
import type { PictureShape, ShopGround } from '../engine/wire.gen';
import { hexOf, rgbOf } from '../state/project';
import { Choice } from '../widgets/basic';
import { CountField } from '../widgets/TextField';

interface Props {
  ground: ShopGround;
  pixels: number;
  preview: string;
  versions: number;
  making: string;
  onGround: (change: Partial<ShopGround>, what: string) => void;
  onPixels: (px: number) => void;
  onSave: (all: boolean, shop: boolean) => void;
}

export const LEAST_PX = 200;
export const MOST_PX = 4000;

export function PapersPictures(p: Props) {
  const { ground: g } = p;
  return (
    <>
      {p.preview ? <img class="shop-preview" src={p.preview} alt="The pin on its ground, as the picture will be" /> : null}
      <div class="limit-grid">
        <CountField label="long side" value={p.pixels} least={LEAST_PX} most={MOST_PX} unit="px" onCount={p.onPixels} />
        <CountField label="room beside the pin" value={Math.round(g.margin * 100)} least={0} most={40} unit="%" onCount={(n) => p.onGround({ margin: n / 100 }, `Room of ${n} % beside the pin`)} />
        <CountField label="shadow" value={Math.round(g.shadow * 100)} least={0} most={100} unit="%" onCount={(n) => p.onGround({ shadow: n / 100 }, `Shadow of ${n} %`)} />
      </div>
      <label class="card-colour"><input type="color" value={hexOf(g.rgb)} onChange={(e) => { const rgb = rgbOf(e.currentTarget.value); if (rgb) p.onGround({ rgb }, 'Ground for the pictures'); }} /> ground</label>
      <Choice<PictureShape | 'square'> legend="Shape" value={g.shape || 'square'} options={[{ value: 'square', label: 'square' }, { value: 'portrait', label: 'four to five, upright' }, { value: 'close', label: 'close to the pin' }]}
        onPick={(v) => p.onGround({ shape: v === 'square' ? '' : v }, 'Shape of the pictures')} />
      {p.versions > 1 ? (
        <p class="row-acts">
          <button type="button" class="plain" aria-busy={p.making === 'all shop' || undefined} onClick={() => p.onSave(true, true)}>Save all {p.versions} versions on the ground</button>
          <button type="button" class="plain" aria-busy={p.making === 'all cut-out' || undefined} onClick={() => p.onSave(true, false)}>Save all {p.versions} cut out</button>
        </p>
      ) : null}
    </>
  );
}
