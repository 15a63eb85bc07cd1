import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig, type Plugin } from 'vite';

/** Where `npm start` listens; only the development server needs it. */
const SERVICE = process.env.TRAYBOOK_URL ?? 'http://localhost:3000';

/** Compresses each asset once, as small as it gets; the service sends what lies beside it. */
function compressed(): Plugin {
  let folder = '';
  return {
    name: 'traybook-compressed',
    apply: 'build',
    configResolved: ({ root, build }) => {
      folder = join(root, build.outDir, build.assetsDir);
      if (build.outDir.startsWith('/')) folder = join(build.outDir, build.assetsDir);
    },
    closeBundle: () => {
      for (const name of readdirSync(folder).filter((file) => /\.(js|css|svg)$/.test(file))) {
        const file = join(folder, name);
        const content = readFileSync(file);
        const params = { [constants.BROTLI_PARAM_QUALITY]: 11 };
        writeFileSync(`${file}.br`, brotliCompressSync(content, { params }));
        writeFileSync(`${file}.gz`, gzipSync(content, { level: 9 }));
      }
    },
  };
}

export default defineConfig({
  root: 'apps/web',
  plugins: [react(), compressed()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: false,
    reportCompressedSize: true,
  },
  // The service compares Origin with Host: both are then the address that the browser sees.
  server: { proxy: { '/api': { target: SERVICE, changeOrigin: false } } },
});
