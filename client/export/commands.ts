/** The commands of export, by which others run it; in a browser alone they say that there is no machine to write files. */
export const exportCommands = ['draftwright.export', 'draftwright.copyAsSvg'] as const;

/** For the preview alone: it hands the bytes of a picture to its page, which alone can put them on the clipboard. */
export const DRAW_FOR_PREVIEW = 'draftwright.internal.drawForPreview';

export type Copied = { readonly bytes: Uint8Array } | { readonly reason: string };
