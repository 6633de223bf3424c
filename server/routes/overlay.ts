/** What was kept, with the fields that were sent in their place. A field that was not sent stays. */
export function overlaid<Kept extends object>(
  kept: Kept,
  change: { readonly [Field in keyof Kept]?: Kept[Field] | undefined },
): Kept {
  const sent = Object.entries(change).filter(([, value]) => value !== undefined);
  return { ...kept, ...Object.fromEntries(sent) };
}
