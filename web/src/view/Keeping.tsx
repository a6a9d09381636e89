// Projects and their keeping, and whether the page works offline: at the head of
// the sheet.
import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import '../style/keeping.css';
import { KeepingAlarm, KeepingPanel } from '../panels/KeepingPanel';
import { fromFile, toFile } from '../state/keepFile';
import { current, follow, goOnHere, open, openCopy, projects, refresh, standing } from '../state/keep';
import { beginAnew, copy, putAway, putBack, remove, rename } from '../state/keepList';
import { newer, offline, startOffline, takeNewer } from '../state/offline';

const shown = signal(false);

const close = () => (shown.value = false);

function pick(files: FileList | null): void {
  const [first] = files ?? [];
  if (!first) return;
  close();
  void fromFile(first, first.name);
}

export default function Keeping() {
  useEffect(() => {
    follow();
    startOffline();
  }, []);
  const see = () => {
    shown.value = true;
    void refresh();
  };
  return (
    <>
      <button type="button" class="link keep-open" aria-haspopup="dialog" onClick={see}>Projects</button>
      {newer.value
        ? <span class="stays" role="status">A new version is here: <button type="button" class="link" onClick={() => void takeNewer()}>use it now</button></span>
        : offline.value === 'ready' ? <span class="stays" role="status">Ready offline.</span> : null}
      <KeepingAlarm standing={standing.value} name={current.value?.name ?? ''} onHere={() => void goOnHere()} onCopy={() => void openCopy()} onSave={() => void toFile()} />
      {shown.value ? <Sheet /> : null}
    </>
  );
}

function Sheet() {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => ref.current?.showModal(), []);
  const away = (act: () => unknown) => () => {
    close();
    void act();
  };
  return (
    <dialog class="keeping-dialog" ref={ref} aria-labelledby="keeping-title" onClose={close} onClick={(e) => e.target === ref.current && close()}>
      <KeepingPanel
        standing={standing.value} current={current.value} projects={projects.value} putAway={putAway.value} now={Date.now()}
        onOpen={(id) => away(() => open(id))()} onRename={(m, name) => void rename(m, name)} onCopy={(m) => void copy(m)}
        onRemove={(m) => void remove(m)} onPutBack={() => void putBack()}
        onNew={away(beginAnew)} onSave={() => void toFile()} onFile={pick} onClose={close}
      />
    </dialog>
  );
}
