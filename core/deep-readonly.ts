/**
 * A value that nobody changes, all the way down. Rows and replies are typed so: what core returns crosses the border, and
 * comes back, without a copy for the compiler's sake. A branded number stays what it is.
 */
export type DeepReadonly<T> = T extends string | number | boolean | bigint | symbol | null | undefined
  ? T
  : { readonly [K in keyof T]: DeepReadonly<T[K]> };
