import type { Plugin } from 'vite';

const GEODESICS = /(node_modules\/geographiclib-geodesic\/)geographiclib-geodesic\.min\.js$/;

/** Its sources in the order in which the package itself joins them; the fourth, areas, is not asked for here. */
const GEODESIC_SOURCES = ['Math', 'Geodesic', 'GeodesicLine'];

const VARIATION = /node_modules\/magvar\/src\/(\w+)\.js$/;
const REQUIRED = /const (\{[^}]*\}) = require\('(\.\/(\w+))'\);/g;
const EXPORTED = 'module.exports = {';

/**
 * Two packages of the core, published as scripts of an older kind, as modules: without what nobody asks for,
 * and without the loader for such scripts, a file of its own that the Fly page would wait for. Where a later
 * edition of the second is written otherwise, it goes into the build as it comes.
 */
export function packagesAsModules(): Plugin {
  return {
    name: 'packages-as-modules',
    apply: 'build',
    enforce: 'pre',
    async transform(code, id) {
      if (GEODESICS.test(id)) {
        // The sources share one variable, `geodesic`, as the package's own wrapper lets them.
        const sources = await Promise.all(
          GEODESIC_SOURCES.map((name) =>
            this.fs.readFile(id.replace(GEODESICS, `$1src/${name}.js`), { encoding: 'utf8' }),
          ),
        );
        return { code: [...sources, 'export default geodesic;'].join('\n'), map: null };
      }
      const variation = VARIATION.exec(id)?.[1];
      if (variation === undefined || !code.includes(EXPORTED)) return null;
      return { code: variationModule(code, variation), map: null };
    },
  };
}

function variationModule(code: string, name: string): string {
  const named = name === 'magvar' ? '\nexport { magneticField };' : '';
  return (
    code
      .replace(REQUIRED, "import all_$3 from '$2';\nconst $1 = all_$3;")
      .replace(EXPORTED, 'export default {') + named
  );
}
