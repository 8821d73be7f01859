import type { OutlineEntry, PrintedSheet } from './printedSheet.ts';

/** A text file that goes out beside the sheets: a single chart as SVG, a chart in words, the written pattern. */
export interface PublishedFile {
  /** File name with its extension, without folder; unique in its publication. */
  readonly name: string;
  readonly text: string;
}

/** A heading with the sheet (index in `sheets`) that it begins on. */
export interface PublicationEntry extends OutlineEntry {
  readonly sheet: number;
}

/** What one set of choices gives; the same pattern and choices give the same bytes. */
export interface Publication {
  /** Word for file names, from the title: `puffin-quay`. */
  readonly name: string;
  readonly title: string;
  readonly creator: string;
  readonly rights: string;
  /** In reading order. */
  readonly sheets: readonly PrintedSheet[];
  readonly files: readonly PublishedFile[];
  readonly outline: readonly PublicationEntry[];
}
