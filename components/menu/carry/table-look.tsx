import { useEffect, useState } from 'react'
import { lookAtTable, takeTable } from '#components/menu/carry/ask-carry.ts'
import styles from '#components/menu/carry/carry.module.css'
import type { Encoded } from '#components/menu/carry/chosen-file.ts'
import { useCarryWords } from '#components/menu/carry/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Note } from '#components/ui/note.tsx'
import type { PlannedRow, TableOf } from '#lib/carry/csv/planned.ts'
import type { CsvLook } from '#lib/carry/http.ts'

interface TableLookProps {
  readonly file: File
  readonly station: string
  readonly first: TableOf
  readonly onTaken: (station: string, said: string) => void
}

function Rows({ rows }: { readonly rows: readonly PlannedRow[] }) {
  const words = useCarryWords()
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
    <section className={styles.rows} aria-label={words.tableOf} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.row}</th>
            <th scope="col">{words.name}</th>
            <th scope="col">{words.does}</th>
            <th scope="col">{words.why}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((one) => (
            <tr key={one.row} data-does={one.does}>
              <td>{one.row}</td>
              <th scope="row">{one.with ? words.with(one.name, one.with) : one.name}</th>
              <td>{words.doing[one.does]}</td>
              <td>
                {[
                  ...(one.why === null ? [] : [words.rowRefused(one.why)]),
                  ...one.changes.map(words.rowChange),
                  ...one.notes.map(words.rowNote),
                ].join('; ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** What each row of a table would do, before anything is done. */
export function TableLook({ file, station, first, onTaken }: TableLookProps) {
  const words = useCarryWords()
  const [what, setWhat] = useState<TableOf>(first)
  const [encoding, setEncoding] = useState<Encoded>('')
  const [seen, setSeen] = useState<CsvLook | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [asksBytes, setAsksBytes] = useState(false)
  const [round, setRound] = useState(0)

  // biome-ignore lint/correctness/useExhaustiveDependencies: a round is a look once more
  useEffect(() => {
    let isOver = false
    void lookAtTable(file, { station, what, encoding }).then((answer) => {
      if (isOver) return
      setSeen(answer.code === 'done' ? answer : null)
      if (answer.code === 'done') return
      const problem = answer.code === 'wrong-file' ? answer.problem : null
      setAsksBytes(problem?.why === 'unknown-encoding')
      setSaid(problem === null ? words.lost : `${words.wrongFile(problem)} ${words.nothingChanged}`)
    })
    return () => {
      isOver = true
    }
  }, [file, station, what, encoding, words, round])

  const take = async () => {
    if (seen === null) return
    const answer = await takeTable(file, { station, what, encoding }, seen.saw)
    if (answer.code === 'done') onTaken(station, words.rowsTaken(answer.taken, answer.refused))
    else {
      setSaid(answer.code === 'stale' ? words.stale : words.lost)
      setRound(round + 1)
    }
  }

  const rows = seen?.rows ?? []
  const refused = rows.filter(({ does }) => does === 'refused').length
  const taken = rows.length - refused - rows.filter(({ does }) => does === 'same').length
  return (
    <>
      <Choice
        legend={words.tableOf}
        ways={[
          { id: 'ingredients' as const, label: words.ofIngredients },
          { id: 'recipes' as const, label: words.ofRecipes },
        ]}
        chosen={what}
        onChoose={(one) => {
          setSaid(null)
          setWhat(one)
        }}
      />
      {said !== null && (
        <Note kind={seen === null ? 'no' : 'watch'} role="alert">
          {said}
        </Note>
      )}
      {seen === null && asksBytes && (
        <Button
          onClick={() => {
            setSaid(null)
            setEncoding('windows-1252')
          }}
        >
          {words.asWindows}
        </Button>
      )}
      {seen === null && said === null && <p role="status">{words.looking}</p>}
      {seen !== null && (
        <>
          {seen.readAs.ignored.length > 0 && <Note>{words.ignored(seen.readAs.ignored)}</Note>}
          <Rows rows={rows} />
          <Button
            kind="main"
            size="large"
            lacks={taken === 0 ? words.takesNone : null}
            {...(refused > 0 ? { sub: words.staysOut(refused) } : {})}
            onClick={() => void take()}
          >
            {words.takeRows(taken)}
          </Button>
        </>
      )}
    </>
  )
}
