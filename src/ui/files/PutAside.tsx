import { useEffect, useState } from 'react';
import { forgetPutAside, jobPutAside } from '../../store/autosave';
import { download } from './download';

/** A job of an earlier visit that could not be opened: it can be had as a file, and let go of. */
export function PutAside() {
  const [text, setText] = useState<string>();
  useEffect(() => {
    let here = true;
    void jobPutAside().then((found) => here && setText(found));
    return () => {
      here = false;
    };
  }, []);
  if (text === undefined) return null;
  return (
    <div className="links">
      <span className="quiet">A job of an earlier visit was put aside.</span>
      <button type="button" className="link" onClick={() => download('Job put aside.bendwright.json', text, 'application/json')}>
        Save it to a file
      </button>
      <button
        type="button"
        className="link"
        onClick={() => {
          setText(undefined);
          void forgetPutAside();
        }}
      >
        Let it go
      </button>
    </div>
  );
}
