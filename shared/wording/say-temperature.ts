import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '@/shared/units/convert'

/** "210.8 °F (99.3 °C)": to a tenth of a degree, Fahrenheit first as the tables print it. */
export const sayTemperature = (celsius: number): string => `${tenth(fahrenheitFromCelsius(celsius))}\u00a0°F (${tenth(celsius)}\u00a0°C)`

/** "220 °F (104.4 °C)": a printed temperature, as printed. */
export const sayPrinted = (fahrenheit: number): string => `${fahrenheit}\u00a0°F (${tenth(celsiusFromFahrenheit(fahrenheit))}\u00a0°C)`

/** "1.2 °F (0.7 °C)": a difference of temperatures, without its sign. */
export const sayDegrees = (celsius: number): string => `${tenth(Math.abs(celsius) * 1.8)}\u00a0°F (${tenth(Math.abs(celsius))}\u00a0°C)`

const tenth = (degrees: number): string => degrees.toFixed(1)
