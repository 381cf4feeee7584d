import type { Plugin } from 'vite';
import { functionsMetadata } from './functions-json.ts';
import { MANIFEST_PATHS } from './manifest.ts';
import { PROJECT_PATHS } from './project-paths.ts';

/**
 * Adds what the manifest names for the custom functions: their description, and a script. The shared runtime loads
 * the page instead, but a manifest must name a script, whose address may not change with what is in it; so it only
 * imports the page's own.
 */
export function functionsPlugin(): Plugin {
  return {
    name: 'custom-functions',
    configureServer(server) {
      server.middlewares.use(`/${MANIFEST_PATHS.functionsMetadata}`, (_request, response, next) => {
        functionsMetadata(PROJECT_PATHS.functions).then(({ json }) => {
          response.setHeader('content-type', 'application/json');
          response.end(json);
        }, next);
      });
      server.middlewares.use(`/${MANIFEST_PATHS.functionsScript}`, (_request, response) => {
        response.setHeader('content-type', 'text/javascript');
        response.end("import '/main.tsx';\n");
      });
    },
    async generateBundle(_options, bundle) {
      const { json } = await functionsMetadata(PROJECT_PATHS.functions);
      this.emitFile({ type: 'asset', fileName: MANIFEST_PATHS.functionsMetadata, source: json });
      const entry = Object.values(bundle).find((output) => output.type === 'chunk' && output.isEntry);
      if (entry === undefined) this.error('the page has no script of its own');
      const source = `import './${entry.fileName}';\n`;
      this.emitFile({ type: 'asset', fileName: MANIFEST_PATHS.functionsScript, source });
    },
  };
}
