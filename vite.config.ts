import { readFileSync } from 'node:fs';
import { defineConfig } from 'vite';
import { addInVersion } from './src/build/development-manifest.ts';
import { functionsPlugin } from './src/build/functions-plugin.ts';
import { manifestPlugin } from './src/build/manifest-plugin.ts';
import { policyPlugin } from './src/build/policy-plugin.ts';
import { PROJECT_PATHS } from './src/build/project-paths.ts';
import { sizeBudgetPlugin } from './src/build/size-budget.ts';

/** What the scripts and style sheets that load with the pane may weigh with gzip, in bytes. */
const PANE_BUDGET = 200 * 1024;

/** A spreadsheet program takes an add-in over https only: by the certificate that the environment names. */
function encrypted() {
  const { JARLEAF_CERTIFICATE: certificate, JARLEAF_KEY: key } = process.env;
  if (certificate === undefined || key === undefined) return {};
  return { https: { cert: readFileSync(certificate), key: readFileSync(key) } };
}

export default defineConfig({
  root: PROJECT_PATHS.addIn,
  // The folder may stand at any path of a server.
  base: './',
  build: {
    outDir: PROJECT_PATHS.dist,
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    // Small images stay files: a data address is one more thing that a policy has to allow.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
  },
  // A worker imports on demand too, which only modules can.
  worker: { format: 'es' },
  server: { port: 3000, strictPort: true, ...encrypted() },
  preview: { port: 3000, strictPort: true, ...encrypted() },
  plugins: [
    policyPlugin(),
    functionsPlugin(),
    manifestPlugin(process.env['JARLEAF_ADDRESS'], addInVersion()),
    sizeBudgetPlugin(PANE_BUDGET),
  ],
});
