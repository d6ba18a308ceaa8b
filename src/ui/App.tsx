import { lazy, Suspense, useEffect, type ReactNode } from 'react';
import { useBench, type Room } from '../store/bench';
import { unreachable } from '../core/result';
import { pressKey } from './commands';
import { openDroppedFiles } from './files/openings';
import { Head } from './head/Head';
import { KeysPanel } from './keys/KeysPanel';
import { forgetOutcomes } from './screen';
import { PartsRoom } from './parts/PartsRoom';
import { LiveLine } from './trouble/LiveLine';
import { Otherwise } from './trouble/Otherwise';
import { TroubleLine } from './trouble/TroubleLine';
import './sheet.css';

/** Rooms that are not in the first view load when they are entered. */
const CompareRoom = lazy(async () => ({ default: (await import('./compare/CompareRoom')).CompareRoom }));
const StockRoom = lazy(async () => ({ default: (await import('./stock/StockRoom')).StockRoom }));
const PapersRoom = lazy(async () => ({ default: (await import('./papers/PapersRoom')).PapersRoom }));
const FilesRoom = lazy(async () => ({ default: (await import('./files/FilesRoom')).FilesRoom }));

export function App() {
  const room = useBench((state) => state.room);
  const jobName = useBench(({ job }) => job.name.trim());

  useEffect(() => {
    addEventListener('keydown', pressKey);
    const stops = [openDroppedFiles(), forgetOutcomes()];
    return () => {
      removeEventListener('keydown', pressKey);
      for (const stop of stops) stop();
    };
  }, []);

  useEffect(() => {
    document.title = jobName ? `${jobName}: Bendwright` : 'Bendwright';
  }, [jobName]);

  return (
    <>
      <a className="skip" href="#sheet">
        Go to the sheet
      </a>
      <LiveLine />
      <Head />
      <TroubleLine />
      <KeysPanel />
      <RoomInView room={room} />
    </>
  );
}

function RoomInView({ room }: { readonly room: Room }) {
  switch (room) {
    case 'parts':
      return <PartsRoom />;
    case 'compare':
      return (
        <Loaded key={room}>
          <CompareRoom />
        </Loaded>
      );
    case 'stock':
      return (
        <Loaded key={room}>
          <StockRoom />
        </Loaded>
      );
    case 'papers':
      return (
        <Loaded key={room}>
          <PapersRoom />
        </Loaded>
      );
    case 'files':
      return (
        <Loaded key={room}>
          <FilesRoom />
        </Loaded>
      );
    default:
      return unreachable(room);
  }
}

const Sheet = ({ says }: { readonly says?: string }) => (
  <main id="sheet" className="sheet" tabIndex={-1}>
    {says !== undefined && <p className="sheet-says">{says}</p>}
  </main>
);

function Loaded({ children }: { readonly children: ReactNode }) {
  return (
    <Otherwise show={<Sheet says="This place did not load. Look at the connection and load the page once more; the job is kept." />}>
      <Suspense fallback={<Sheet />}>{children}</Suspense>
    </Otherwise>
  );
}
