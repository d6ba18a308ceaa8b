import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  // Relative paths: the app can be put in any folder of any server.
  base: './',
  plugins: [react()],
  resolve: {
    // The PDF library asks for these when it is given HTML or SVG to draw, which it never is here.
    alias: Object.fromEntries(['html2canvas', 'dompurify', 'canvg'].map((name) => [name, fileURLToPath(new URL('src/export/pdf/emptyModule.ts', import.meta.url))])),
  },
  build: {
    target: 'es2023',
    // three alone is over the size that the builder warns of; it loads behind the first view.
    chunkSizeWarningLimit: 800,
    // Fonts stay files of their own: inlined, every face would load whether it is needed or not.
    assetsInlineLimit: 0,
  },
});
