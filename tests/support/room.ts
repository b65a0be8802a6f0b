/** What the services of the language server work in, without a connection: for tests and benches that call them directly. */
import { Diagnostics } from '../../server/lsp/diagnostics';
import type { Desk } from '../../server/lsp/desk';
import { Previews } from '../../server/lsp/previews';
import type { Room } from '../../server/lsp/service';

const nowhere = () => undefined;

export const roomOf = (desk: Desk, previews = new Previews(desk, nowhere)): Room => ({
  desk,
  previews,
  diagnostics: new Diagnostics(nowhere, desk, nowhere),
});
