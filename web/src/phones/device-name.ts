/** A name to begin with for a device, by what its browser says of itself. */
export function deviceName(userAgent: string): string {
  if (/iPhone/.test(userAgent)) return 'iPhone';
  if (/iPad/.test(userAgent)) return 'iPad';
  if (/Android/.test(userAgent)) return /Mobile/.test(userAgent) ? 'Android phone' : 'Android tablet';
  if (/Windows|Macintosh|Linux|CrOS/.test(userAgent)) return 'Computer';
  return 'Phone';
}
