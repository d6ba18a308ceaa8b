import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  // Relative paths: the app can be put in any folder of any server.
  base: './',
  plugins: [react()],
  build: {
    target: 'es2023',
    // Fonts stay files of their own: inlined, every face would load whether it is needed or not.
    assetsInlineLimit: 0,
  },
});
