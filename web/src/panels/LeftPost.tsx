// Post by weight and thickness, and what lies round a pin.
import type { Fault, PostClass, Selling, Wrapping } from '../engine/wire.gen';
import { Amount, faultAt, Faults, Measure } from '../widgets/MoneyFields';
import { TextField } from '../widgets/TextField';

interface Props {
  plan: Selling;
  currency: string;
  faults: readonly Fault[];
  pinGrams: number;
  onPlan: (change: (plan: Selling) => Selling, what: string) => void;
}

export function LeftPost(p: Props) {
  const { plan } = p;
  const own = Math.round(p.pinGrams * 10) / 10;
  return (
    <details class="more">
      <summary>Post and packing</summary>
      <div class="order-fields">
        <Measure label="a pin weighs" value={plan.grams} unit="g" {...(own > 0 ? { follows: `${own}` } : {})} fault={faultAt(p.faults, 'grams')} onSet={(grams) => p.onPlan((q) => ({ ...q, grams }), 'Weight of a pin')} />
        <Measure label="thick, with its clutch" value={plan.mm} unit="mm" fault={faultAt(p.faults, 'mm')} onSet={(mm) => p.onPlan((q) => ({ ...q, mm }), 'Thickness of a pin')} />
      </div>
      <Packing {...p} />
      <h4>Classes of post</h4>
      <Classes {...p} />
    </details>
  );
}

function Packing(p: Props) {
  const w = p.plan.packing;
  const set = (change: Partial<Wrapping>, what: string) => p.onPlan((q) => ({ ...q, packing: { ...q.packing, ...change } }), what);
  const fault = (key: keyof Wrapping) => faultAt(p.faults, `packing.${key}`);
  const rows = [['envelope', 'envelopeGrams', 'envelope, a parcel'], ['card', 'cardGrams', 'backing card, a pin'], ['bag', 'bagGrams', 'bag, a pin']] as const;
  return (
    <div class="order-fields">
      {rows.flatMap(([price, grams, label]) => [
        <Amount key={price} label={label} value={w[price]} currency={p.currency} fault={fault(price)} onSet={(v) => set({ [price]: v }, label)} />,
        <Measure key={grams} label="it weighs" value={w[grams]} unit="g" fault={fault(grams)} onSet={(v) => set({ [grams]: v }, `Weight: ${label}`)} />,
      ])}
      <Measure label="packing adds to the thickness" value={w.envelopeMM} unit="mm" fault={fault('envelopeMM')} onSet={(envelopeMM) => set({ envelopeMM }, 'Thickness of the packing')} />
    </div>
  );
}

const NEW_CLASS: PostClass = { name: 'another class', grams: 100, mm: 25, price: '0' };

function Classes(p: Props) {
  const { classes } = p.plan;
  const put = (i: number, change: Partial<PostClass>) =>
    p.onPlan((q) => ({ ...q, classes: q.classes.map((c, j) => (j === i ? { ...c, ...change } : c)) }), 'A class of post');
  const fault = (i: number, key: keyof PostClass) => faultAt(p.faults, `classes[${i}].${key}`);
  return (
    <div class="cell-rows">
      <ul aria-label="Classes of post">
        {classes.map((c, i) => (
          <li key={i}>
            <TextField label="class" value={c.name} onSet={(text) => () => put(i, { name: text.trim() })} />
            <Measure label="up to" value={c.grams} unit="g" fault={fault(i, 'grams')} onSet={(grams) => put(i, { grams })} />
            <Measure label="thick up to" value={c.mm} unit="mm" fault={fault(i, 'mm')} onSet={(mm) => put(i, { mm })} />
            <Amount label="a parcel" value={c.price} currency={p.currency} fault={fault(i, 'price')} onSet={(price) => put(i, { price })} />
            <button type="button" class="link" aria-label={`Remove ${c.name}`} onClick={() => p.onPlan((q) => ({ ...q, classes: q.classes.filter((_, j) => j !== i) }), `Removed ${c.name}`)}>✕</button>
          </li>
        ))}
      </ul>
      <Faults faults={p.faults} at="classes" />
      <button type="button" class="link" onClick={() => p.onPlan((q) => ({ ...q, classes: [...q.classes, NEW_CLASS] }), 'Added a class of post')}>add a class</button>
    </div>
  );
}
