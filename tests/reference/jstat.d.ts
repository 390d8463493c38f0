/** The part of the package that is compared with; it has no types of its own. */
declare module 'jstat' {
  const jstat: {
    readonly jStat: {
      readonly negbin: { readonly cdf: (k: number, n: number, p: number) => number }
      readonly poisson: { readonly cdf: (k: number, mean: number) => number }
      readonly normal: { readonly cdf: (x: number, mean: number, sd: number) => number }
      readonly ibeta: (x: number, a: number, b: number) => number
    }
  }
  export = jstat
}
