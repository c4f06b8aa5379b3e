import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { line, type Scene, type Shape, words } from '#drawing/scene.ts';
import { svgOf, xmlText } from '#drawing/svg.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';

const scene = (shapes: readonly Shape[]): Scene => ({
  title: 'A sheet',
  widthMm: 210,
  heightMm: 297,
  scale: 50,
  layers: [{ name: 'only', shapes }],
});

describe('SVG text', () => {
  it('is true to scale: its size is in mm and its units are mm', () => {
    const svg = svgOf(scene([]));
    expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
  });

  it('makes any text harmless, whatever it holds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const svg = svgOf(scene([words('text', sheetPoint(1, 1), text)]));
        const body = svg.slice(svg.indexOf('<text'), svg.indexOf('</text>'));
        const inner = body.slice(body.indexOf('>') + 1);
        expect(inner).not.toMatch(/[<>"]/);
        expect(inner).not.toMatch(/&(?!amp;|lt;|gt;|quot;)/);
        // XML 1.0 (W3C, fifth edition), production 2: the characters that a document may hold.
        expect(inner).not.toMatch(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u);
      }),
    );
  });

  it('carries no style, no script and no outside reference', () => {
    const svg = svgOf(
      scene([
        words('text', sheetPoint(1, 1), '<script>x</script>'),
        line('new', [sheetPoint(0, 0), sheetPoint(9, 9)]),
      ]),
    );
    expect(svg).not.toMatch(/style=|<script|href=|url\(/);
  });

  it('names the thing of the job that a group belongs to', () => {
    const group: Shape = {
      kind: 'group',
      subject: 'p1',
      title: 'R1, 300 mm',
      shapes: [line('found', [sheetPoint(0, 0), sheetPoint(1, 0)])],
    };
    expect(svgOf(scene([group]))).toContain(
      '<g data-subject="p1"><title>R1, 300 mm</title><path d="M0 0L1 0"',
    );
  });

  it('draws an arc clockwise on paper from its first to its last angle', () => {
    const arc: Shape = {
      kind: 'arc',
      at: sheetPoint(10, 10),
      radiusMm: 2,
      fromDeg: 0,
      toDeg: 90,
      closed: false,
      ink: 'found',
    };
    expect(svgOf(scene([arc]))).toContain('d="M12 10A2 2 0 0 1 10 12"');
  });

  it('escapes quotes in titles', () => {
    expect(xmlText('a "b" & c')).toBe('a &quot;b&quot; &amp; c');
  });
});
