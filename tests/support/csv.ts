/** A reader of comma-separated values by RFC 4180, strict: what the grammar there does not allow throws. */

export function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  const quoted = (): string => {
    let field = '';
    for (at++; ; at++) {
      if (at >= text.length) throw new Error('a quoted field does not end');
      if (text[at] !== '"') field += text[at];
      else if (text[at + 1] === '"') {
        field += '"';
        at++;
      } else {
        at++;
        return field;
      }
    }
  };
  const plain = (): string => {
    const found = /^[^",\r\n]*/.exec(text.slice(at))![0];
    at += found.length;
    return found;
  };
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      record.push(text[at] === '"' ? quoted() : plain());
      if (text[at] !== ',') break;
      at++;
    }
    if (text.slice(at, at + 2) !== '\r\n') throw new Error(`no line end after ${record.join(' | ')}`);
    at += 2;
    records.push(record);
  }
  return records;
}
