import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import { daylight, julianDayOf, sunAt, sunInSky, sunOnDay } from '../../core/light/sun.ts';

/** "134° 48′" as degrees. */
function degrees(words: string): number {
  const [whole = 0, minutes = 0] = words.split(' ').map(Number);
  return whole + minutes / 60;
}

/** "7:59" as hours. */
function hours(words: string): number {
  const [whole = 0, minutes = 0] = words.split(':').map(Number);
  return whole + minutes / 60;
}

describe('the sun against published figures', () => {
  // Meeus (1998), Astronomical Algorithms, 2nd ed., example 25.a (p. 165): 1992 October 13.0. The figures were read in open programs that
  // quote the book. Its equations are used here, so they must agree to the last printed digit but one.
  it('stands where Meeus’ worked example 25.a puts it', () => {
    const sun = sunAt(2_448_908.5);
    expect(sun.longitudeDeg).toBeCloseTo(199.90895, 4);
    expect(sun.rightAscensionDeg).toBeCloseTo(198.38083, 4);
    expect(sun.declinationDeg).toBeCloseTo(-7.78507, 4);
  });

  // Meeus, example 28.a: the same moment by the long theory, 13.70940 minutes. The short one is good to about a second.
  it('is ahead of the clock as in Meeus’ example 28.a', () => {
    expect(Math.abs(sunAt(2_448_908.5).equationOfTimeMin - 13.7094)).toBeLessThan(0.02);
  });

  // Meeus, ch. 7: 1957 October 4.81 is JD 2436116.31; 2000 January 1.5 is JD 2451545.0. Quoted from open programs.
  it('counts Julian days as Meeus does', () => {
    expect(julianDayOf(day('1957-10-04')) + 0.81).toBeCloseTo(2_436_116.31, 6);
    expect(julianDayOf(day('2000-01-01')) + 0.5).toBe(2_451_545);
  });

  // Reda and Andreas (2008), Solar Position Algorithm for Solar Radiation Applications, NREL/TP-560-34302, table A5.1: 2003-10-17,
  // 12:30:30 at UT − 7 h, 39.742476° north, 105.1786° west. Declination −9.31434°, equation of time 14.641503 min, azimuth 194.34024°,
  // elevation without refraction 39.872046° (with parallax, 0.002°), sunrise 13:12:43.46 UT.
  describe('in the worked example of NREL’s solar position algorithm', () => {
    const sun = sunAt(julianDayOf(day('2003-10-17')) + (19.5 + 30 / 3600) / 24);

    it('has its declination and equation of time', () => {
      // This theory is good to 0.01°.
      expect(Math.abs(sun.declinationDeg - -9.31434)).toBeLessThan(0.01);
      expect(Math.abs(sun.equationOfTimeMin - 14.641503)).toBeLessThan(0.03);
    });

    it('stands in its place in the sky', () => {
      const solarHour = 12.5 + 30 / 3600 + (105 - 105.1786) / 15 + sun.equationOfTimeMin / 60;
      const { bearingDeg, elevationDeg } = sunInSky(39.742476, sun.declinationDeg, solarHour);
      expect(Math.abs(bearingDeg - 194.34024)).toBeLessThan(0.02);
      expect(Math.abs(elevationDeg - 39.872046)).toBeLessThan(0.02);
    });

    it('rises as long before noon', () => {
      // From sunrise to transit (18:46:04.97 UT) 5 h 33 min 21.51 s, with the sun's declination at sunrise. The table's sunset is that
      // of the evening before: 00:20 UT of the same date.
      const { declinationDeg } = sunAt(julianDayOf(day('2003-10-17')) + 13.2 / 24);
      const halfDay = daylight(39.742476, declinationDeg).dayLengthHours / 2;
      expect(Math.abs(halfDay - (5 + 33 / 60 + 21.51 / 3600)) * 3600).toBeLessThan(10);
    });
  });

  // Printed table "Sun's true bearing or azimuth", latitude 38°, declination contrary to latitude (a navigator's table of before 1900,
  // page 91, read at goobi.tib.eu/viewer/fulltext/825719445/104): apparent time, then declination 12°, 16°, 19° and 22°.
  it.each([
    ['9:00', ['130 27', '133 5', '134 59', '136 50']],
    ['8:56', ['129 36', '132 16', '134 11', '136 3']],
    ['8:40', ['126 19', '129 4', '131 3', '132 59']],
    ['8:28', ['123 58', '126 45', '128 47', '130 47']],
    ['8:12', ['120 57', '123 47', '125 53', '127 57']],
    ['8:00', ['118 45', '121 39', '123 46', '125 52']],
  ])('bears at %s as a printed azimuth table says', (time, printed) => {
    [12, 16, 19, 22].forEach((south, column) => {
      const { bearingDeg } = sunInSky(38, -south, hours(time));
      // Printed to the minute of arc.
      expect(Math.abs(bearingDeg - degrees(printed[column] as string)) * 60).toBeLessThan(1);
    });
  });

  // Printed table of sunrise on 1 January 2002 by local mean time, aa.quae.nl/en/antwoorden/zonpositie-tabel.html, table 1.
  it.each([
    [-60, '2:43'],
    [-50, '3:55'],
    [-34, '4:52'],
    [0, '6:00'],
    [20, '6:35'],
    [34, '7:05'],
    [40, '7:22'],
    [44, '7:35'],
    [48, '7:50'],
    [50, '7:59'],
  ])('rises at latitude %d as a printed table says', (latitude, printed) => {
    const { declinationDeg, equationOfTimeMin } = sunOnDay(day('2002-01-01'));
    const { dayLengthHours } = daylight(latitude, declinationDeg);
    const rise = 12 - equationOfTimeMin / 60 - dayLengthHours / 2;
    // Printed to the minute.
    expect(Math.abs(rise - hours(printed)) * 60).toBeLessThan(1);
  });

  // Allen et al. (1998), FAO Irrigation and Drainage Paper 56, example 10: 20° south, 3 September: 11.7 hours, of the sun's middle over the
  // geometric horizon. Its short formula for the declination is 0.5° off on that day, hence the tolerance.
  it('gives the daylight hours of FAO-56’s example 10', () => {
    const { declinationDeg } = sunOnDay(day('1998-09-03'));
    expect(Math.abs(daylight(-20, declinationDeg, 0).dayLengthHours - 11.7)).toBeLessThan(0.1);
  });

  // Sunrise's amplitude on the geometric horizon: cos A = sin δ ÷ cos φ, in every book of spherical astronomy.
  it.each([
    [52, 23.44],
    [52, -23.44],
    [-31.93, -23.8],
    [0, 10],
  ])('rises at latitude %d and declination %d where spherical trigonometry says', (latitude, declination) => {
    const rad = Math.PI / 180;
    const wanted = Math.acos(Math.sin(declination * rad) / Math.cos(latitude * rad)) / rad;
    expect(daylight(latitude, declination, 0).sunriseBearingDeg).toBeCloseTo(wanted, 9);
    expect(daylight(latitude, declination, 0).sunsetBearingDeg).toBeCloseTo(360 - wanted, 9);
  });
});
