import './checks.css';

export type Level = 'good' | 'care' | 'stop';

const WORDS: Record<Level, string> = { good: 'Good', care: 'Look at this', stop: 'Put this right' };

/** Tick, triangle or cross: the only marks that stand without their word on the screen; they are read out with it. */
export function Mark({ level }: { readonly level: Level }) {
  return (
    <svg className={`mark ${level}`} viewBox="0 0 24 24" role="img" aria-label={WORDS[level]}>
      {level === 'good' && <path d="M4.5 12.5 10 18 19.5 6.5" />}
      {level === 'care' && (
        <>
          <path className="filled" d="M12 3 21.5 20.5H2.5z" />
          <path d="M12 9.5v5M12 17.4v.2" />
        </>
      )}
      {level === 'stop' && <path d="M5 5 19 19M19 5 5 19" />}
    </svg>
  );
}
