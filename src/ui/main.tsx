import './fonts.css';
import './tokens.css';
import './base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { keepSaved, restore } from '../store/autosave';
import { openExample } from './files/openings';
import { App } from './App';
import { ErrorBoundary } from './trouble/ErrorBoundary';

const host = document.querySelector('#bench');

// The job kept by this browser comes before the first paint, so that the example does not flash up.
const restored = await restore();
if (!restored) openExample();
keepSaved();

if (host) {
  createRoot(host).render(
    <StrictMode>
      <ErrorBoundary>
        <App />
      </ErrorBoundary>
    </StrictMode>,
  );
}
