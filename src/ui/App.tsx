import { useEffect } from 'react';
import { useBench } from '../store/bench';
import { unreachable } from '../core/result';
import { pressKey } from './commands';
import { openDroppedFiles } from './files/openings';
import { FilesRoom } from './files/FilesRoom';
import { Head } from './head/Head';
import { KeysPanel } from './keys/KeysPanel';
import { PartsRoom } from './parts/PartsRoom';
import { StockRoom } from './stock/StockRoom';
import { LiveLine } from './trouble/LiveLine';
import { TroubleLine } from './trouble/TroubleLine';
import './sheet.css';

export function App() {
  const room = useBench((state) => state.room);
  const jobName = useBench(({ job }) => job.name.trim());

  useEffect(() => {
    addEventListener('keydown', pressKey);
    const stopDrops = openDroppedFiles();
    return () => {
      removeEventListener('keydown', pressKey);
      stopDrops();
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
      <Head />
      <TroubleLine />
      <KeysPanel />
      <RoomInView room={room} />
      <LiveLine />
    </>
  );
}

function RoomInView({ room }: { readonly room: 'parts' | 'stock' | 'files' }) {
  switch (room) {
    case 'parts':
      return <PartsRoom />;
    case 'stock':
      return <StockRoom />;
    case 'files':
      return <FilesRoom />;
    default:
      return unreachable(room);
  }
}
