import type { Table } from './table.ts';

/**
 * Volt drop of flat twin cable, both conductors together, single-phase, mV per ampere and metre, with the
 * conductor at 70 °C already: not to be raised for temperature once more. Listed sizes only.
 */
export const voltDropFlatCable = {
  source: {
    ref: 'BS 7671:2018',
    where: 'Table 4D5, volt drop',
    checked: 'from public pages; every figure agrees with 2 · r · 1.2 by IEC 60228 within 1.4 %',
  },
  rows: [
    {
      areaMm2: 1,
      millivoltPerAM: 44,
      status: 'seen',
      page: 'http://www.ericpalmer.fsnet.co.uk/Table4D5.html',
    },
    {
      areaMm2: 1.5,
      millivoltPerAM: 29,
      status: 'seen',
      page: 'http://www.ericpalmer.fsnet.co.uk/Table4D5.html',
    },
    {
      areaMm2: 2.5,
      millivoltPerAM: 18,
      status: 'seen',
      page: 'https://www.diydoctor.org.uk/forums/17th-edition-question-t18895.html',
    },
    // No page prints it; one works with it: 32 A and 11.5 V giving 32 m.
    {
      areaMm2: 4,
      millivoltPerAM: 11,
      status: 'derived',
      page: 'https://engx.theiet.org/f/wiring-and-regulations/30767/csa-on-a-radial-what-length-would-you-reach-with-a-4mm',
    },
    {
      areaMm2: 6,
      millivoltPerAM: 7.3,
      status: 'seen',
      page: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/312',
    },
    {
      areaMm2: 10,
      millivoltPerAM: 4.4,
      status: 'seen',
      page: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/312',
    },
    {
      areaMm2: 16,
      millivoltPerAM: 2.8,
      status: 'seen',
      page: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/312',
    },
  ],
} as const satisfies Table;
