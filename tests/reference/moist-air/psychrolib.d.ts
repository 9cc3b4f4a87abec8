declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pascal: number): number;
    GetTDewPointFromRelHum(celsius: number, relativeHumidity: number): number;
  };
  export default psychrolib;
}
