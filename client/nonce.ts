/** A word that a page's policy and its own script share, so that no other script runs; new for each page. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
