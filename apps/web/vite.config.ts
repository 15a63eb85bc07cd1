import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig } from 'vite';

/** Where `npm start` listens; only the development server needs it. */
const SERVICE = process.env.TRAYBOOK_URL ?? 'http://localhost:3000';

export default defineConfig({
  root: 'apps/web',
  plugins: [react()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
    reportCompressedSize: true,
  },
  server: { proxy: { '/api': SERVICE } },
});
