import type { SheetCell } from '../svg/sheetItems.ts';
import type { PdfFile } from './pdfFile.ts';

type Content = PDFKit.PDFStructureContent;

interface Cell {
  readonly cell: SheetCell;
  readonly contents: Content[];
}

interface OpenTable {
  readonly element: PDFKit.PDFStructureElement;
  readonly cells: Map<string, Cell>;
}

/**
 * The tables of a sheet as a PDF tags them: Table, TR, TH with what it heads, TD. Lines of cells are drawn side by side, line by line; a reader takes
 * them row by row, each cell as a whole, so the rows are put together once all is drawn.
 */
export class PdfTables {
  readonly #pdf: PdfFile;
  readonly #part: PDFKit.PDFStructureElement;
  readonly #tables = new Map<number, OpenTable>();

  constructor(pdf: PdfFile, part: PDFKit.PDFStructureElement) {
    this.#pdf = pdf;
    this.#part = part;
  }

  /** Takes in what was drawn of a cell of the nth table; the table stands where its first cell is drawn. */
  add(nth: number, cell: SheetCell, content: Content): void {
    const table = this.#tables.get(nth) ?? this.#begin(nth);
    const key = `${cell.row} ${cell.column}`;
    const known = table.cells.get(key);
    if (known) known.contents.push(content);
    else table.cells.set(key, { cell, contents: [content] });
  }

  end(): void {
    for (const { element, cells } of this.#tables.values()) {
      const sorted = [...cells.values()].sort((a, b) => a.cell.row - b.cell.row || a.cell.column - b.cell.column);
      const rows = new Map<number, PDFKit.PDFStructureElement>();
      for (const { cell, contents } of sorted) {
        const row = rows.get(cell.row) ?? this.#pdf.struct('TR');
        if (!rows.has(cell.row)) element.add(row);
        rows.set(cell.row, row);
        row.add(this.#cell(cell, contents));
      }
    }
  }

  #begin(nth: number): OpenTable {
    const table = { element: this.#pdf.struct('Table'), cells: new Map<string, Cell>() };
    this.#part.add(table.element);
    this.#tables.set(nth, table);
    return table;
  }

  #cell({ headOf }: SheetCell, contents: readonly Content[]): PDFKit.PDFStructureElement {
    const element = this.#pdf.struct(headOf === 'none' ? 'TD' : 'TH');
    // ISO 32000-1, 14.8.5.7: what a head is of; the library has no option for it.
    if (headOf !== 'none') (element as unknown as { dictionary: { data: Record<string, unknown> } }).dictionary.data['A'] = { O: 'Table', Scope: headOf === 'column' ? 'Column' : 'Row' };
    for (const content of contents) element.add(content);
    return element;
  }
}
