import type { Cable } from '#model/cable.ts';

/** A kind of cable as the sheets name it. */
export const cableTypeWords: Readonly<Record<Cable['type'], string>> = {
  'flat-twin': 'Flat twin and earth',
  'flat-single': 'Flat single and earth',
  'steel-wire-armoured': 'Steel-wire armoured',
  flex: 'Flex',
  imperial: 'Old imperial cable',
};

/** The size of a cable: "2.5/1.5 mm²", line and protective conductor; of one without the latter "2.5 mm²". */
export const cableSizeWords = ({ lineMm2, cpcMm2 }: Cable): string =>
  `${lineMm2}${cpcMm2 > 0 ? `/${cpcMm2}` : ''} mm²`;

/** A cable as the schedule names it. */
export const cableWords = (cable: Cable): string => `${cableTypeWords[cable.type]} ${cableSizeWords(cable)}`;
