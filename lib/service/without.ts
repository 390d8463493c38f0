/** A record without one of its keys; the same one where it hasn't that. */
export const without = <Value>(record: Readonly<Record<string, Value>>, key: string) => {
  if (record[key] === undefined) return record
  const { [key]: _, ...rest } = record
  return rest
}
