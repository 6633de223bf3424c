import type { Bench } from '../../../../server/schemas/pages.ts';
import { BenchDesk } from '../BenchDesk.tsx';
import { PlantRow } from '../PlantRow.tsx';
import { BenchTools } from './BenchTools.tsx';
import { groupedRows, shownRows } from './bench-order.ts';
import { useBenchView } from './use-bench-view.ts';
import { useShowNames } from './use-show-names.ts';

/** A bench with too many plants for a glance: they can be searched and ordered, and stand close together. */
export default function LargeBench({ bench }: { bench: Bench }) {
  const [view, changeView] = useBenchView();
  const showNames = useShowNames(bench.plants);
  const shown = shownRows(bench.plants, view);
  return (
    <BenchDesk
      bench={bench}
      shown={shown}
      groups={groupedRows(shown, view.order, showNames)}
      tools={<BenchTools rows={bench.plants} view={view} showNames={showNames} onChange={changeView} />}
      Line={PlantRow}
    />
  );
}
