import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { isRefused, look, tell } from '#components/access/ask.ts'
import { followedBy, withChanged, without, withSteps } from '#components/menu/draft/pending.ts'
import type { Draft, EntityKey, Rows } from '#lib/editor/draft.ts'
import type { Labels, MenuAnswer, MenuDraft, Saved, SaveSteps } from '#lib/editor/http.ts'
import type { MissingFor, Problem } from '#lib/editor/problem.ts'
import type { Step } from '#lib/editor/step.ts'

/** What is typed is saved so long after the last letter, milliseconds. */
const SAVE_AFTER_MS = 350
const LOOK_EVERY_MS = 3_000
const AGAIN_AFTER_MS = 2_000

/** What the server last said of a station. */
interface Known {
  readonly saw: number
  readonly rows: Rows
  readonly labels: Labels
  /** No new ingredient is called by these: the house has a label of what was. */
  readonly idsOfBefore: readonly string[]
  readonly problems: readonly Problem[]
  readonly missing: MissingFor
  readonly published: number | null
  readonly changed: boolean
  readonly open: boolean
}

/** Rows that somebody else changed while they were changed here. */
export interface Clash {
  readonly keys: readonly EntityKey[]
}

export type SaveState = 'saved' | 'saving' | 'lost' | 'clash'

export interface DraftNow extends Omit<Known, 'rows'> {
  readonly draft: Draft
  readonly state: SaveState
  readonly clash: Clash | null
  /** As the server has it: what others said, without what is typed here. */
  readonly theirs: Draft
  /** What a step was refused for, until another is taken. */
  readonly refused: MenuAnswer<Saved> | null
  readonly take: (...steps: readonly Step[]) => void
  readonly keepMine: () => void
  readonly takeTheirs: () => void
  /** Saves what was typed. The draft that then stands, as `saw` says it; null where it couldn't be. */
  readonly settle: () => Promise<number | null>
  readonly again: () => Promise<void>
}

const merged = (before: Known | null, now: MenuDraft & { readonly saw: number }): Known => ({
  ...now,
  rows: before === null ? (now.rows as Rows) : withChanged(before.rows, now.rows),
})

/**
 * A station's draft as it stands with what is typed here: saved by itself, step by step, and heard
 * of from whoever else changes it. null until the server told it.
 */
export const useDraft = (
  station: string,
): { readonly now: DraftNow | null; readonly lost: string | null } => {
  const [known, setKnown] = useState<Known | null>(null)
  const [lost, setLost] = useState<string | null>(null)
  const [pending, setPending] = useState<readonly Step[]>([])
  const [clash, setClash] = useState<Clash | null>(null)
  const [refused, setRefused] = useState<MenuAnswer<Saved> | null>(null)
  const [isLost, setIsLost] = useState(false)
  // What is asked goes by what is true when it is asked, not when it was drawn.
  const at = useRef({ known, pending, clash, sending: 0, isBusy: false })
  const set = useCallback((next: Partial<typeof at.current>) => {
    Object.assign(at.current, next)
    if ('known' in next) setKnown(at.current.known)
    if ('pending' in next) setPending(at.current.pending)
    if ('clash' in next) setClash(at.current.clash)
  }, [])

  const again = useCallback(async () => {
    const { known: before, isBusy } = at.current
    if (isBusy) return
    const after = before === null ? '' : `&after=${before.saw}`
    const answer = await look<MenuDraft>(`/menu/draft?station=${station}${after}`)
    if (at.current.isBusy || at.current.known !== before) return
    if (isRefused(answer)) return setLost(answer.code)
    setLost(null)
    set({ known: merged(before, answer) })
  }, [station, set])

  const save = useCallback(async (): Promise<boolean> => {
    const { known: before, pending: steps, isBusy } = at.current
    if (before === null || isBusy || at.current.clash) return false
    if (steps.length === 0) return true
    Object.assign(at.current, { isBusy: true, sending: steps.length })
    const asked: SaveSteps = { station, saw: before.saw, steps }
    const answer = (await tell('/menu/steps', asked)) as MenuAnswer<Saved>
    const rest = at.current.pending.slice(at.current.sending)
    Object.assign(at.current, { isBusy: false, sending: 0 })
    if (answer.code === 'done') {
      setIsLost(false)
      const { saw, rows, problems, missing } = answer
      const next = { ...before, saw, problems, missing, changed: true }
      set({ known: { ...next, rows: withChanged(before.rows, rows) }, pending: rest })
      return rest.length === 0 ? true : save()
    }
    if (answer.code === 'stale') {
      set({
        known: { ...before, saw: answer.saw, rows: withChanged(before.rows, answer.rows) },
        clash: { keys: answer.changed },
      })
      return false
    }
    if (answer.code === 'step-refused') {
      setRefused(answer)
      set({ pending: [...steps.toSpliced(answer.step, 1), ...rest] })
      return save()
    }
    setIsLost(true)
    return false
  }, [station, set])

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    let isShown = true
    const round = async () => {
      clearTimeout(timer)
      if (at.current.pending.length === 0) await again()
      if (isShown) timer = setTimeout(() => void round(), LOOK_EVERY_MS)
    }
    void round()
    return () => {
      isShown = false
      clearTimeout(timer)
    }
  }, [again])

  useEffect(() => {
    if (pending.length === 0 || clash) return
    const timer = setTimeout(() => void save(), isLost ? AGAIN_AFTER_MS : SAVE_AFTER_MS)
    return () => clearTimeout(timer)
  }, [pending, clash, isLost, save])

  // A page that is left sends what it still has; one that was never saved says so.
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (at.current.pending.length === 0) return
      void save()
      event.preventDefault()
    }
    addEventListener('beforeunload', onLeave)
    return () => removeEventListener('beforeunload', onLeave)
  }, [save])

  const take = useCallback(
    (...steps: readonly Step[]) => {
      setRefused(null)
      const { pending: before, sending } = at.current
      const [sent, free] = [before.slice(0, sending), before.slice(sending)]
      set({ pending: [...sent, ...steps.reduce(followedBy, free)] })
    },
    [set],
  )
  const settle = useCallback(async (): Promise<number | null> => {
    for (let tries = 0; tries < 40; tries += 1) {
      const { pending: steps, isBusy, clash: over, known: before } = at.current
      if (over) return null
      if (steps.length === 0 && !isBusy) return before?.saw ?? null
      if (isBusy) await new Promise((done) => setTimeout(done, 100))
      else await save()
    }
    return null
  }, [save])
  const keepMine = useCallback(() => {
    set({ clash: null })
    void save()
  }, [set, save])
  const takeTheirs = useCallback(() => {
    const { pending: steps, clash: over } = at.current
    set({ pending: without(steps, over?.keys ?? []), clash: null })
  }, [set])

  const theirs = useMemo(
    () => (known === null ? null : { station, rows: known.rows }),
    [station, known],
  )
  const draft = useMemo(
    () => (theirs === null ? null : withSteps(theirs, pending)),
    [theirs, pending],
  )
  if (known === null || theirs === null || draft === null) return { now: null, lost }
  const state: SaveState = clash
    ? 'clash'
    : isLost || lost !== null
      ? 'lost'
      : pending.length > 0
        ? 'saving'
        : 'saved'
  const hands = { take, keepMine, takeTheirs, settle, again }
  const now = { ...known, draft, theirs, state, clash, refused, ...hands }
  return { now, lost }
}
