import { medianOf } from '../growth.ts';
import { loaded, startJobReadServers } from '../job-read-servers.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

/** How long one is asked before it is the other's turn, s. */
const TURN_S = 2;

/** Reads of a stored job beside the bare framework; none where any answer is missing or is no job. */
export const readFigures: FigureGroup = {
  name: 'read',
  measure: async ({ rounds }) => {
    const servers = await startJobReadServers();
    try {
      const rateOf = async (url: string): Promise<number> => {
        const { requestsPerSecond, errors } = await loaded(url, TURN_S);
        if (errors > 0) throw new Error(`${errors} of the answers were none`);
        return requestsPerSecond;
      };
      // Once for nothing, so that neither pays for the compiler.
      await rateOf(servers.urls.product);
      await rateOf(servers.urls.bare);
      const { product, bare } = await byTurns(rounds, {
        product: () => rateOf(servers.urls.product),
        bare: () => rateOf(servers.urls.bare),
      });
      return { httpJobVsBareHono: medianOf(product) / medianOf(bare) };
    } finally {
      await servers.close();
    }
  },
};
