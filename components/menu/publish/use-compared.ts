import { useCallback, useEffect, useState } from 'react'
import { isRefused, look } from '#components/access/ask.ts'
import type { Change } from '#lib/editor/change.ts'
import type { Compared } from '#lib/editor/http.ts'

/** What differs between two revisions, or a revision and the draft; null while it isn't known. */
export const useCompared = (
  station: string,
  from: number | null,
  saw: number,
): readonly Change[] | null => {
  const [changes, setChanges] = useState<readonly Change[] | null>(null)
  const ask = useCallback(async () => {
    if (from === null) return setChanges(null)
    const answer = await look<Compared>(`/menu/compare?station=${station}&from=${from}&to=draft`)
    if (!isRefused(answer)) setChanges(answer.changes)
  }, [station, from])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another draft differs otherwise
  useEffect(() => {
    void ask()
  }, [ask, saw])
  return changes
}
