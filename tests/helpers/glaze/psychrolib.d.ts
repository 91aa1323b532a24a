declare module 'psychrolib' {
  interface Psychrolib {
    SI: number;
    SetUnitSystem(system: number): void;
    /** °C → Pa */
    GetSatVapPres(temperature: number): number;
    /** °C, 0 to 1, Pa → °C */
    GetTWetBulbFromRelHum(temperature: number, humidity: number, pressure: number): number;
    /** °C, 0 to 1 → °C */
    GetTDewPointFromRelHum(temperature: number, humidity: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
