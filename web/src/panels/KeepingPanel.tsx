// The projects that are kept, and the file that one can be carried away in. Data
// in, wishes out.
import { useEffect, useState } from 'preact/hooks';
import type { Meta } from '../state/keepRecord';
import type { Standing } from '../state/keep';
import { changedSays, standingSays } from '../words/keeping';
import { TextField } from '../widgets/TextField';

export interface KeepingProps {
  standing: Standing;
  current: Meta | undefined;
  projects: readonly Meta[];
  putAway: Meta | undefined;
  now: number;
  onOpen: (id: string) => void;
  onRename: (m: Meta, name: string) => void;
  onCopy: (m: Meta) => void;
  onRemove: (m: Meta) => void;
  onPutBack: () => void;
  onNew: () => void;
  onSave: () => void;
  onFile: (f: FileList | null) => void;
  onClose: () => void;
}

export function KeepingPanel(p: KeepingProps) {
  const here = p.projects.filter((m) => m.gone === undefined);
  const bad = p.standing.kind === 'refused' || p.standing.kind === 'elsewhere';
  return (
    <div class="keeping">
      <header class="keeping-head">
        <h2 id="keeping-title" tabIndex={-1} autofocus>Projects</h2>
        <button type="button" class="close" onClick={p.onClose} aria-label="Close">✕</button>
      </header>
      <p class={bad ? 'warn' : undefined} role="status">{standingSays(p.standing, p.current?.name ?? '')}</p>
      {here.length > 0 ? <ul class="projects">{here.map((m) => <Row key={m.id} {...p} meta={m} />)}</ul> : null}
      {p.putAway ? <p class="row-acts" role="status">“{p.putAway.name}” is put away. <button type="button" class="link" onClick={p.onPutBack}>put it back</button></p> : null}
      <Acts {...p} />
      <p class="hint">The file holds the project and your drawings as you brought them. It opens in this page on any device; drop it here.</p>
    </div>
  );
}

function Row(p: KeepingProps & { meta: Meta }) {
  const { meta: m } = p;
  const now = m.id === p.current?.id;
  const rename = (text: string) => (text.trim() === '' ? 'A project has a name. Type one.' : () => p.onRename(m, text.trim()));
  return (
    <li class={now ? 'now' : undefined}>
      <Thumb of={m} />
      <div class="project-words">
        <TextField label={`Name of ${m.name}`} hideLabel value={m.name} onSet={rename} />
        <span class="hint">{now ? 'on the sheet' : `changed ${changedSays(m.changed, p.now)}`}</span>
      </div>
      <span class="project-acts">
        {now ? null : <button type="button" class="plain" aria-label={`Open ${m.name}`} onClick={() => p.onOpen(m.id)}>Open</button>}
        <button type="button" class="link" aria-label={`Copy ${m.name}`} onClick={() => p.onCopy(m)}>copy</button>
        <button type="button" class="link" aria-label={`Put ${m.name} away`} onClick={() => p.onRemove(m)}>✕</button>
      </span>
    </li>
  );
}

function Thumb({ of }: { of: Meta }) {
  const [url, setURL] = useState<string>();
  const { thumb } = of;
  useEffect(() => {
    if (!thumb) return undefined;
    const made = URL.createObjectURL(thumb);
    setURL(made);
    return () => URL.revokeObjectURL(made);
  }, [thumb]);
  return <span class="project-thumb">{url && thumb ? <img src={url} alt={`The pin of ${of.name}`} /> : null}</span>;
}

function Acts(p: KeepingProps) {
  return (
    <div class="row-acts">
      <button type="button" class="plain" onClick={p.onNew}>New project</button>
      <button type="button" class={p.standing.kind === 'refused' ? 'solid' : 'plain'} onClick={p.onSave}>Save to a file</button>
      <label class="plain file-act">Open a file
        <input class="unseen" type="file" accept=".badgewright,application/octet-stream,application/zip" onChange={(e) => { p.onFile(e.currentTarget.files); e.currentTarget.value = ''; }} />
      </label>
    </div>
  );
}

/** What must be seen at once: another tab has the project, or nothing is kept. */
export function KeepingAlarm(p: { standing: Standing; name: string; onHere: () => void; onCopy: () => void; onSave: () => void }) {
  const { kind } = p.standing;
  if (kind !== 'elsewhere' && kind !== 'refused') return null;
  return (
    <div class="keep-note" role="alert">
      <p>{standingSays(p.standing, p.name)}</p>
      {kind === 'elsewhere' ? (
        <>
          <button type="button" class="solid" onClick={p.onHere}>Go on here</button>
          <button type="button" class="plain" onClick={p.onCopy}>Open a copy</button>
        </>
      ) : <button type="button" class="solid" onClick={p.onSave}>Save to a file</button>}
    </div>
  );
}
