/** Properties of moist air between about -5 and 60 °C; vapour is an ideal gas throughout. */

/** Critical point of water. Source: IAPWS R1-76(2014) / Wagner and Pruß (1993), J. Phys. Chem. Ref. Data 22:783. */
const CRITICAL_K = 647.096;
const CRITICAL_PA = 22_064_000;
/** Coefficients a1 to a6 of the saturation line. Source: Wagner and Pruß (1993), eq. 1 (recalled; held against ASHRAE and CRC tables by the tests). */
const A1 = -7.85951783;
const A2 = 1.84408259;
const A3 = -11.7866497;
const A4 = 22.6807411;
const A5 = -15.9618719;
const A6 = 1.80122502;
/** Specific gas constant of water vapour, J/(kg K). Source: IAPWS-95 (R = 461.51805) with CODATA rounding, as psychrometric handbooks use it. */
const VAPOUR_GAS_CONSTANT = 461.523;
const ZERO_CELSIUS_K = 273.15;
/** Ratio of molar masses, water to dry air. Source: ASHRAE Handbook Fundamentals (2017), ch. 1, eq. 20. */
const MASS_RATIO = 0.621945;
export const STANDARD_PRESSURE_PA = 101_325;

/**
 * Returns the saturation vapour pressure over liquid water in Pa, supercooled water below 0 °C, at a temperature in °C.
 * Source: Wagner and Pruß (1993), eq. 1.
 */
export function saturationPressurePa(temperatureC: number): number {
  const kelvin = temperatureC + ZERO_CELSIUS_K;
  const tau = 1 - kelvin / CRITICAL_K;
  const root = Math.sqrt(tau);
  const cube = tau * tau * tau;
  const sum = A1 * tau + A2 * tau * root + cube * (A3 + A4 * root + A5 * tau + A6 * cube * tau * root);
  return CRITICAL_PA * Math.exp((CRITICAL_K / kelvin) * sum);
}

/** Returns the vapour density in g/m³ of a vapour pressure in Pa at a temperature in °C (gas law). */
export function vapourDensityGPerM3(pressurePa: number, temperatureC: number): number {
  return (1000 * pressurePa) / (VAPOUR_GAS_CONSTANT * (temperatureC + ZERO_CELSIUS_K));
}

/** Returns the vapour density of saturated air in g/m³ at a temperature in °C. */
export function saturationDensityGPerM3(temperatureC: number): number {
  return vapourDensityGPerM3(saturationPressurePa(temperatureC), temperatureC);
}

/** Returns the humidity ratio in kg of vapour a kg of dry air, at a vapour pressure below the air pressure, both in Pa. */
export function humidityRatio(vapourPressurePa: number, airPressurePa: number = STANDARD_PRESSURE_PA): number {
  return (MASS_RATIO * vapourPressurePa) / (airPressurePa - vapourPressurePa);
}

/**
 * Returns the dew point in °C of a vapour pressure above 0 Pa: the inverse of {@link saturationPressurePa}, to 1e-9 K.
 * Newton from a Magnus form; the logarithm of the pressure is close to a line in 1/T, so that four steps do.
 */
export function dewPointC(vapourPressurePa: number): number {
  const magnus = Math.log(vapourPressurePa / 611.2);
  let celsius = (243.12 * magnus) / (17.62 - magnus);
  for (let step = 0; step < 8; step++) {
    const here = Math.log(saturationPressurePa(celsius) / vapourPressurePa);
    const slope = Math.log(saturationPressurePa(celsius + 0.01) / saturationPressurePa(celsius)) / 0.01;
    celsius -= here / slope;
    if (Math.abs(here) < 1e-12) break;
  }
  return celsius;
}
