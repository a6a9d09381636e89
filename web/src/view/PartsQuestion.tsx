// A part stands alone: what is it? The repairs below offer the other answer.
interface Props {
  busy: boolean;
  onHang: () => void;
}

export function PartsQuestion({ busy, onHang }: Props) {
  return (
    <fieldset class="parts-ask">
      <legend>A dangle, or one piece?</legend>
      <button type="button" class="solid" disabled={busy} aria-busy={busy || undefined} onClick={onHang}>Hang it by ring and chain</button>
      <p>Or join it to the rest:</p>
    </fieldset>
  );
}
