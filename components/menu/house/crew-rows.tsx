import { useState } from 'react'
import { About } from '#components/menu/fields/help.tsx'
import styles from '#components/menu/house/bells.module.css'
import menu from '#components/menu/menu.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { type Row, recordsIn, textIn } from '#lib/editor/draft.ts'

/** Who is there in one period, by initials, each once. */
export function CrewRows({ bell, period }: { readonly bell: string; readonly period: string }) {
  const words = useMenuWords()
  const { draft, take } = useMenu()
  const [typed, setTyped] = useState('')
  const crew = recordsIn(draft.rows.day, 'crew')
  const isHere = (one: Row) => one.bell === bell && one.period === period
  const here = crew.filter(isHere)
  const put = (next: readonly Row[]) =>
    take({ do: 'put', entity: 'day', id: 'day', fields: { crew: next } })
  const said = typed.trim().toUpperCase()
  const isTwice = here.some((one) => textIn(one, 'initials').toUpperCase() === said)
  const change = (of: Row, fields: Row | null) =>
    put(
      crew.flatMap((one) =>
        one === of ? (fields === null ? [] : [{ ...one, ...fields }]) : [one],
      ),
    )
  return (
    <About of="crew">
      <form
        className={styles.crew}
        onSubmit={(event) => {
          event.preventDefault()
          if (said === '' || isTwice) return
          put([...crew, { bell, period, initials: said, certified: false }])
          setTyped('')
        }}
      >
        {here.map((one) => (
          <span key={textIn(one, 'initials')} className={menu.chips}>
            <button
              type="button"
              aria-pressed={one.certified === true}
              onClick={() => change(one, { certified: one.certified !== true })}
            >
              {textIn(one, 'initials')}
              {one.certified === true ? ` · ${words.house.certified}` : ''}
            </button>
            <button
              type="button"
              aria-label={words.house.takePeriod(textIn(one, 'initials'))}
              onClick={() => change(one, null)}
            >
              ×
            </button>
          </span>
        ))}
        <Field
          label={words.house.initials}
          maxLength={4}
          value={typed}
          problem={isTwice ? words.house.twice(said) : null}
          onChange={({ target }) => setTyped(target.value)}
          side={
            <Button type="submit" disabled={said === ''}>
              {words.house.addCrew}
            </Button>
          }
        />
      </form>
    </About>
  )
}
