import { z } from 'zod';
import { rowKinds, type RowKind, type Shop } from '../../../core/shop/state.ts';
import type { Draw } from './wild.ts';

/** Makes values that fit a schema, out of what stands in a shop where it can. */
export type Sampler = (schema: z.ZodType, draw: Draw) => unknown;

/** @param more texts by the name of their field, besides those in the shop */
export function samplerOf(shop: Shop, more: Readonly<Record<string, readonly string[]>> = {}): Sampler {
  const { byField, all } = textsOf(shop, more);
  const rows = new Map<unknown, readonly unknown[]>(
    (Object.keys(rowKinds) as RowKind[]).map((kind) => [
      rowKinds[kind],
      kind === 'settings' ? [shop.settings] : shop[kind],
    ]),
  );

  const text = (schema: z.ZodType, field: string, draw: Draw): string => {
    const known = [...(byField.get(field) ?? []), ...(byField.get(field.replace(/Ids?$/, '')) ?? [])];
    const fitting = known.filter((one) => schema.safeParse(one).success);
    if (fitting.length > 0) return draw.of(fitting);
    const others = all.filter((one) => schema.safeParse(one).success);
    return others.length > 0 ? draw.of(others) : 'x';
  };

  const number = (schema: z.ZodNumber, field: string, draw: Draw): number => {
    if (field === 'revision') return draw.of([0, 0, 0, 1]);
    const low = Math.max(schema.minValue ?? 0, -1000);
    const high = Math.min(schema.maxValue ?? 1000, 1e10);
    const value = low + draw.of([0, 0, 1, 2, 0.5, (high - low) / 2, high - low]);
    return Math.min(high, schema.format === null ? value : Math.floor(value));
  };

  const make = (schema: z.ZodType, field: string, draw: Draw): unknown => {
    const known = rows.get(schema);
    if (known && known.length > 0 && draw.chance(90)) return structuredClone(draw.of(known));
    if (schema instanceof z.ZodObject) {
      const fields = Object.entries(schema.shape as Record<string, z.ZodType>);
      return Object.fromEntries(fields.map(([key, inner]) => [key, make(inner, key, draw)]));
    }
    if (schema instanceof z.ZodArray) {
      const count = draw.of([0, 1, 1, 2, 3]);
      return Array.from({ length: count }, () => make(schema.element as z.ZodType, field, draw));
    }
    if (schema instanceof z.ZodUnion) return make(draw.of(schema.options as z.ZodType[]), field, draw);
    if (schema instanceof z.ZodNullable)
      return draw.chance(40) ? null : make(schema.unwrap() as z.ZodType, field, draw);
    if (schema instanceof z.ZodOptional)
      return draw.chance(60) ? undefined : make(schema.unwrap() as z.ZodType, field, draw);
    if (schema instanceof z.ZodLiteral) return draw.of([...schema.values]);
    if (schema instanceof z.ZodEnum) return draw.of(schema.options);
    if (schema instanceof z.ZodBoolean) return draw.chance(50);
    if (schema instanceof z.ZodNumber) return number(schema, field, draw);
    if (schema instanceof z.ZodString || schema instanceof z.ZodStringFormat)
      return text(schema, field, draw);
    if (schema instanceof z.ZodTuple)
      return (schema.def.items as z.ZodType[]).map((item) => make(item, field, draw));
    if (schema instanceof z.ZodRecord) {
      const keys = Array.from({ length: draw.below(3) }, () => make(schema.keyType as z.ZodType, 'id', draw));
      return Object.fromEntries(keys.map((key) => [key, make(schema.valueType as z.ZodType, field, draw)]));
    }
    if (schema instanceof z.ZodReadonly) return make(schema.unwrap() as z.ZodType, field, draw);
    if (schema instanceof z.ZodUnknown || schema instanceof z.ZodAny) return { any: 1 };
    throw new Error(`no sample is known for a ${schema.constructor.name} (${field})`);
  };

  return (schema, draw) => make(schema, '', draw);
}

/** Every text of a shop, by the name of the field it stands in. */
function textsOf(shop: Shop, more: Readonly<Record<string, readonly string[]>>) {
  const byField = new Map<string, string[]>();
  const add = (field: string, one: string): void =>
    void byField.set(field, [...(byField.get(field) ?? []), one]);
  const look = (part: unknown, field: string): void => {
    if (typeof part === 'string') add(field, part);
    else if (Array.isArray(part)) for (const item of part) look(item, field);
    else if (typeof part === 'object' && part !== null)
      for (const [key, inner] of Object.entries(part)) look(inner, key);
  };
  look(shop, '');
  for (const { id, stage } of shop.machine) for (const field of ['machineId', `${stage}Id`]) add(field, id);
  for (const { id } of shop.line) for (const field of ['lineId', 'lineIds', 'line', 'lines']) add(field, id);
  for (const { id } of shop.order) add('orderId', id);
  for (const { operations } of shop.queue)
    for (const id of operations) for (const field of ['operation', 'operations', 'queues']) add(field, id);
  for (const [field, list] of Object.entries(more)) for (const one of list) add(field, one);
  return { byField, all: [...new Set([...byField.values()].flat())] };
}
