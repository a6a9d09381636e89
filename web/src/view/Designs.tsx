// The strip of designs at the head of the sheet, with the versions of the one
// that lies there.
import { useEffect, useState } from 'preact/hooks';
import '../style/designs.css';
import { DesignCards, type Opening } from '../panels/DesignCards';
import { DesignStrip } from '../panels/DesignStrip';
import { chipKey, chips, followChips } from '../state/chips';
import * as d from '../state/designs';
import { pickedOf, withDesign, withVersion } from '../state/project';
import * as s from '../state/store';
import { plural } from '../words/words';
import { demoFile, filesOf, pastedFile } from './doors';

export default function Designs() {
  const [card, setCard] = useState<Opening>(undefined);
  useEffect(followChips, []);
  const p = s.asked.value;
  const [design, version] = [s.design.value, s.version.value];
  if (!p || !design || !version) return null;
  const close = () => setCard(undefined);
  const more = () => {
    d.changeSheet((q) => d.withVersionMore(q, 'Version'), `Added a version of ${design.name}`);
    setCard('version');
  };
  const out = (what: string, make: typeof d.withoutDesign) => {
    close();
    d.changeSheet(make, `Took out ${what}`);
  };
  const last = s.history.value?.past.at(-1)?.what;
  const open = async (files: Promise<Parameters<typeof d.openMore>[0] | undefined>, as?: string) => {
    const got = await files;
    if (!got) return;
    close();
    await d.openMore(got, as);
  };
  return (
    <>
      <DesignStrip
        designs={p.order.designs} at={pickedOf(p)} platings={s.hello.value?.platings ?? []} card={card}
        chipOf={(at) => chips.value[chipKey(p, at)]}
        onTurn={(at) => { close(); s.turnTo(at); }} onMore={more} onCard={(c) => setCard(c === card ? undefined : c)}
        removed={last?.startsWith('Took out ') ? last : undefined} onBack={s.goBack}
      />
      <DesignCards
        open={card} onClose={close} design={design} version={version} platings={s.hello.value?.platings ?? []} designs={p.order.designs.length}
        onVersion={(change, what) => s.change((q) => withVersion(q, change), what)}
        onDesign={(change, what) => s.change((q) => withDesign(q, change), what)}
        onQuantity={(quantity) => s.change((q) => withVersion(q, { quantity }), plural(quantity, 'pin'))}
        onCopyVersion={() => d.changeSheet((q) => d.withVersionMore(q, version.name), `Copied ${version.name}`)}
        onCopyDesign={() => d.changeSheet(d.withDesignCopied, `Copied ${design.name}`)}
        onNoVersion={() => out(version.name, d.withoutVersion)} onNoDesign={() => out(design.name, d.withoutDesign)}
        onFiles={(files) => void open(Promise.resolve(filesOf(files)))} onPaste={() => void open(pastedFile())}
        onDemo={(demo) => void demoFile(demo).then((f) => f && open(Promise.resolve(f.files), f.name))}
      />
    </>
  );
}
