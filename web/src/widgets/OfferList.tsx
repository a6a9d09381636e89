import { useId, useState } from 'preact/hooks';
import type { MendOffer, Offers } from '../engine/wire.gen';
import { Canvas } from './Canvas';

interface Props {
  /** Missing while repairs are tried. */
  answer: Offers | undefined;
  /** The place as it is, then as each offer leaves it. */
  pictures: readonly { pixels: ImageData }[];
  onMake: (o: MendOffer) => void;
}

/** Repairs to choose from. Nothing is changed before one is made. */
export function OfferList({ answer, pictures, onMake }: Props) {
  const [picked, setPicked] = useState(0);
  const name = useId();
  if (!answer) return <p class="mends-wait" role="status">Trying repairs …</p>;
  const offer = answer.offers[picked] ?? answer.offers[0];
  if (!offer) return <p class="mends-none"><b>No repair does here.</b> {answer.why}</p>;
  const at = answer.offers.indexOf(offer);
  return (
    <fieldset class="mends">
      <legend>{answer.offers.length === 1 ? 'A repair' : `${answer.offers.length} repairs to choose from`}</legend>
      <Pair before={pictures[0]} after={pictures[at + 1]} across={answer.across.inMM} />
      {answer.offers.length > 1 ? answer.offers.map((o, i) => (
        <label key={o.words} class="tick">
          <input type="radio" name={name} checked={i === at} onChange={() => setPicked(i)} />
          <span>{o.words}</span>
        </label>
      )) : <p>{offer.words}</p>}
      <p class="facts">Changes {offer.change.words}.</p>
      <button type="button" class="solid" onClick={() => onMake(offer)}>Make this repair</button>
    </fieldset>
  );
}

function Pair({ before, after, across }: { before: Props['pictures'][number] | undefined; after: Props['pictures'][number] | undefined; across: string }) {
  if (!before || !after) return null;
  return (
    <div class="mend-pair">
      <figure><Canvas shot={before} label={`The place as it is, ${across} across`} /><figcaption>as it is</figcaption></figure>
      <figure><Canvas shot={after} label={`The same place repaired, ${across} across`} /><figcaption>repaired</figcaption></figure>
    </div>
  );
}
