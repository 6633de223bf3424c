/** Widths in which a picture is served. */
export const PICTURE_WIDTHS = [{ name: 'width', values: ['320', '800', '1600'] }] as const;
