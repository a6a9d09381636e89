// The sheet before drawing, over everything else while it is open.
import { useEffect, useRef, useState } from 'preact/hooks';
import { BeforeSheet } from '../panels/BeforeSheet';
import { closeBefore, copyNumbers, followBefore, forget, guide, planned, problem, reckoned, saveGuide, wish, wishFor } from '../state/before';
import { bounds } from '../state/bounds';
import { remade } from '../state/plan';
import * as s from '../state/store';

export function Before() {
  return wish.value ? <Open /> : null;
}

function Open() {
  const ref = useRef<HTMLDialogElement>(null);
  const [copied, setCopied] = useState(false);
  const w = wish.value;
  useEffect(() => {
    ref.current?.showModal();
    return followBefore();
  }, []);
  useEffect(() => setCopied(false), [w]);
  const hello = s.hello.value;
  if (!w || !hello) return null;
  const late = reckoned.value?.wish !== w;
  const seen = guide.value;
  return (
    <dialog ref={ref} class="before-dialog" aria-labelledby="before-title" onClose={closeBefore} onClick={(e) => { if (e.target === ref.current) ref.current?.close(); }}>
      <BeforeSheet
        wish={w} canvas={reckoned.value?.canvas} late={late} problem={problem.value} planned={planned.value} bounds={bounds.value} copied={copied}
        picture={seen && { url: seen.url, words: seen.about.words }}
        onSize={(mm) => wishFor((q) => ({ ...q, mm }))}
        onMaking={(making) => wishFor((q) => remade(q, { making }, hello, s.design.value))}
        onFill={(fill) => wishFor((q) => remade(q, { fill }, hello, s.design.value))}
        onOwn={(own) => wishFor((q) => ({ ...q, own }))}
        onSide={(side) => wishFor((q) => ({ ...q, own: q.own && { ...q.own, ...side } }))}
        onSave={(onWhite) => void saveGuide(onWhite)}
        onCopy={() => void copyNumbers().then(setCopied)}
        onForget={forget}
        onClose={() => ref.current?.close()}
      />
    </dialog>
  );
}
