import { zlibSync } from 'fflate';
import PDFDocument from 'pdfkit';

/** What is known about a document as a whole. */
export interface PdfWords {
  readonly title: string;
  readonly creator: string;
  readonly rights: string;
  /** BCP 47. */
  readonly language: string;
  /** As the pattern gives it; none: the file has no date. */
  readonly date: Date | null;
}

interface Stream { buffer: Uint8Array[]; data: { Filter?: string }; finalize: () => void }

const PRODUCER = 'Turnwork';

/**
 * A PDF document that comes out the same, byte for byte, wherever and whenever it is written: compressed by one library in
 * node and browsers, dated by the pattern alone, its id from its contents. `contents` is any text that differs when the document does.
 */
export class PdfFile extends PDFDocument {
  readonly #words: PdfWords;

  constructor(words: PdfWords, contents: string) {
    // No font to begin with: the library's browser build has none of the standard ones.
    super({
      pdfVersion: '1.7', autoFirstPage: false, compress: false, font: '', margin: 0, tagged: true, lang: words.language, displayTitle: true,
      // Needed for the id only; what doesn't belong into the file is taken out again.
      info: { Title: words.title, ...(words.creator ? { Author: words.creator } : {}), Creator: PRODUCER, Producer: PRODUCER, CreationDate: words.date ?? new Date(0), Keywords: contents },
    });
    this.#words = words;
    delete this.info.Keywords;
    if (words.date === null) delete this.info.CreationDate;
  }

  override ref(data: object): PDFKit.PDFKitReference {
    const made = super.ref(data);
    const stream = made as unknown as Stream;
    const finalize = stream.finalize.bind(stream);
    stream.finalize = () => {
      if (stream.buffer.length > 0 && stream.data.Filter === undefined && !('Subtype' in stream.data && stream.data.Subtype === 'XML')) {
        stream.buffer = [zlibSync(joined(stream.buffer), { level: 6 })];
        stream.data.Filter = 'FlateDecode';
      }
      finalize();
    };
    return made;
  }

  /** The library's own metadata would need a date and would leave names unescaped. */
  _addInfo(): void {
    const { title, creator, rights, date, language } = this.#words;
    const alt = (name: string, value: string): string => (value === '' ? '' : `<dc:${name}><rdf:Alt><rdf:li xml:lang="x-default">${escaped(value)}</rdf:li></rdf:Alt></dc:${name}>`);
    this.appendXML(`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
${alt('title', title)}${creator === '' ? '' : `<dc:creator><rdf:Seq><rdf:li>${escaped(creator)}</rdf:li></rdf:Seq></dc:creator>`}${alt('rights', rights)}
<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>${PRODUCER}</xmp:CreatorTool><pdf:Producer>${PRODUCER}</pdf:Producer>${date === null ? '' : `<xmp:CreateDate>${date.toISOString().slice(0, 10)}</xmp:CreateDate>`}
</rdf:Description>`);
  }
}

function escaped(text: string): string {
  return text.replace(/[^\u0009\u000a\u000d\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '').replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
