/** Attribute name → value, e.g. { tool: 'T2', colour: 'moss' }. */
export type Attributes = Readonly<Record<string, string>>;

/** What an operation asks for on a machine: everywhere, and there besides. */
export function attributesOn(
  operation: {
    readonly attributes?: Attributes;
    readonly machines?: readonly { readonly id: string; readonly attributes?: Attributes }[];
  },
  machine: string,
): Attributes {
  const own = operation.machines?.find(({ id }) => id === machine)?.attributes;
  return own === undefined ? (operation.attributes ?? {}) : { ...operation.attributes, ...own };
}

export interface Changeover {
  readonly combine: 'sum' | 'max';
  /** Seconds when the attribute's value differs from the machine's state. */
  readonly attributes: Readonly<Record<string, number>>;
  /** Seconds for named from → to values, instead of the attribute's own figure. */
  readonly exceptions?: readonly {
    readonly attribute: string;
    readonly from: string;
    readonly to: string;
    readonly seconds: number;
  }[];
  /** A full matrix over one attribute's values; `initial[j]` when value j comes first on an empty machine. */
  readonly pairs?: {
    readonly attribute: string;
    readonly values: readonly string[];
    readonly seconds: readonly (readonly number[])[];
    readonly initial?: readonly number[];
  };
}
