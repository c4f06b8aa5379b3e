import { createRequire } from 'node:module';
import type { TFontDictionary } from 'pdfmake/interfaces.js';

const require = createRequire(import.meta.url);
const file = (name: string): string => require.resolve(`@expo-google-fonts/${name}.ttf`);

// The whole faces, not the slices that a screen is served: the PDF writer embeds what of them a paper uses.
const regular = file('barlow/400Regular/Barlow_400Regular');
const strong = file('barlow/600SemiBold/Barlow_600SemiBold');
const narrow = file('barlow-semi-condensed/400Regular/BarlowSemiCondensed_400Regular');
const narrowStrong = file('barlow-semi-condensed/600SemiBold/BarlowSemiCondensed_600SemiBold');

/** The two faces of the look by the names that drawings call them; neither has a slanted cut here. */
export const pdfFonts: TFontDictionary = {
  Barlow: { normal: regular, bold: strong, italics: regular, bolditalics: strong },
  'Barlow Semi Condensed': {
    normal: narrow,
    bold: narrowStrong,
    italics: narrow,
    bolditalics: narrowStrong,
  },
};

/** The face of drawings, by its weight. */
export const drawingFaces = { plain: narrow, strong: narrowStrong } as const;

/** The only files of this machine that the PDF writer may read. */
export const fontFiles: ReadonlySet<string> = new Set([regular, strong, narrow, narrowStrong]);
