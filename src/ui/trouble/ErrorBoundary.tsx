import { Component, type ReactNode } from 'react';
import { bench, undo } from '../../store/bench';
import { saveJobToFile } from '../files/jobFile';
import './trouble.css';

interface Failed {
  readonly what: string | null;
}

/** Where the screen itself fails: says so plainly, and lets the maker save the job and go on. */
export class ErrorBoundary extends Component<{ readonly children: ReactNode }, Failed> {
  override state: Failed = { what: null };

  static getDerivedStateFromError(thrown: unknown): Failed {
    return { what: thrown instanceof Error ? thrown.message : String(thrown) };
  }

  override render(): ReactNode {
    if (this.state.what === null) return this.props.children;
    const last = bench.getState().past.at(-1)?.label;
    return (
      <main className="failed">
        <h1>The screen could not be drawn</h1>
        <p>The fault is Bendwright’s, not yours. The job itself is whole; save it to a file before anything else.</p>
        <p className="quiet">What the browser said: {this.state.what}</p>
        <div className="outputs">
          <button type="button" className="btn main" onClick={saveJobToFile}>
            Save the job <small>to a file of your own</small>
          </button>
          <button type="button" className="btn" onClick={() => this.setState({ what: null })}>
            Draw it again <small>as it was</small>
          </button>
          {last !== undefined && (
            <button
              type="button"
              className="btn"
              onClick={() => {
                undo();
                this.setState({ what: null });
              }}
            >
              Undo and draw again <small>{last}</small>
            </button>
          )}
        </div>
      </main>
    );
  }
}
