import type { Plugin } from 'vite';
import { lintManifest } from './lint-manifest.ts';
import { manifestXml } from './manifest.ts';
import { projectSurroundings } from './manifest-surroundings.ts';

/** An address that nobody has, for a build that isn't to be put anywhere. */
const PLACEHOLDER_ADDRESS = 'https://jarleaf.example';

/**
 * Adds the manifest for the address where the built folder will stand: the one in the environment variable
 * JARLEAF_ADDRESS, else a placeholder, which is said.
 */
export function manifestPlugin(address: string | undefined, version: string): Plugin {
  return {
    name: 'manifest',
    apply: 'build',
    generateBundle() {
      if (address === undefined) {
        this.warn(
          `JARLEAF_ADDRESS is not set, so manifest.xml names ${PLACEHOLDER_ADDRESS}, where nothing is: ` +
            'set it to the https address where this folder will stand.',
        );
      }
      if (address !== undefined && !isHttps(address)) {
        this.error(
          `JARLEAF_ADDRESS holds ${address}: an https address such as ${PLACEHOLDER_ADDRESS} is right.`,
        );
      }
      const folder = (address ?? PLACEHOLDER_ADDRESS).replace(/\/+$/, '');
      const xml = manifestXml({ address: folder, version });
      const faults = lintManifest(xml, projectSurroundings());
      if (faults.length > 0) this.error(faults.join('\n'));
      this.emitFile({ type: 'asset', fileName: 'manifest.xml', source: xml });
    },
  };
}

function isHttps(address: string): boolean {
  return URL.canParse(address) && new URL(address).protocol === 'https:';
}
