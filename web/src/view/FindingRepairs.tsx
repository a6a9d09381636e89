// The repairs of one trouble spot on its card: each with the place before and after.
import { useEffect } from 'preact/hooks';
import type { Finding, Project } from '../engine/wire.gen';
import { askOffers, makeRepairs, offered } from '../state/mend';
import { mayMend } from '../state/repairs';
import { repairedWords } from '../words/repairs';
import { OfferList } from '../widgets/OfferList';

interface Props {
  project: Project;
  finding: Finding;
  onDone: () => void;
}

export function FindingRepairs({ project, finding, onDone }: Props) {
  useEffect(() => {
    if (mayMend(finding)) void askOffers(project, finding);
  }, [project, finding]);
  const now = offered.value;
  if (!mayMend(finding) || !now || now.finding !== finding) return null;
  return (
    <OfferList
      answer={now.answer} pictures={now.pictures}
      onMake={(o) => { makeRepairs(o.recipes, repairedWords(o.recipes)); onDone(); }}
    />
  );
}
