'use client'

import { useEffect, useState } from 'react'
import page from '#components/access/page.module.css'
import { labelsOf } from '#components/menu/label/ask-labels.ts'
import { LabelPanel } from '#components/menu/label/label-panel.tsx'
import styles from '#components/menu/label/screen.module.css'
import { LabelFormWordsProvider, useLabelFormWords } from '#components/menu/label/words.tsx'
import { Note } from '#components/ui/note.tsx'
import type { MenuLabels } from '#lib/editor/label-http.ts'

interface Address {
  readonly station: string
  readonly ingredient: string | null
}

const addressed = (search: string): Address => {
  const asked = new URLSearchParams(search)
  return { station: asked.get('station') ?? '', ingredient: asked.get('ingredient') }
}

function Choose({ station, onChoose }: { station: string; onChoose: (id: string) => void }) {
  const words = useLabelFormWords()
  const [labels, setLabels] = useState<MenuLabels | null>(null)
  const [lost, setLost] = useState<string | null>(null)
  useEffect(() => {
    void labelsOf(station).then((answer) => {
      if ('ingredients' in answer) setLabels(answer)
      else setLost(words.refused[answer.code] ?? words.noStation)
    })
  }, [station, words])
  if (lost !== null) return <Note kind="no">{lost}</Note>
  if (labels === null) return <p>{words.connecting}</p>
  if (labels.ingredients.length === 0) return <p>{words.noIngredients}</p>
  return (
    <ul className={styles.ingredients}>
      {labels.ingredients.map(({ ingredient, name, label }) => (
        <li key={ingredient}>
          <button type="button" onClick={() => onChoose(ingredient)}>
            <b>{name}</b>
            <span>{label.label?.readOn ? words.readOn(label.label.readOn) : words.neverRead}</span>
          </button>
        </li>
      ))}
    </ul>
  )
}

function Screen() {
  const words = useLabelFormWords()
  const [at, setAt] = useState<Address | null>(null)
  useEffect(() => {
    const read = () => setAt(addressed(location.search))
    read()
    addEventListener('popstate', read)
    return () => removeEventListener('popstate', read)
  }, [])
  const go = (ingredient: string | null) => {
    if (at === null) return
    const more = ingredient === null ? '' : `&ingredient=${encodeURIComponent(ingredient)}`
    history.pushState(null, '', `?station=${encodeURIComponent(at.station)}${more}`)
    setAt({ ...at, ingredient })
  }
  return (
    <main className={page.page}>
      {at === null ? (
        <p>{words.connecting}</p>
      ) : at.ingredient === null ? (
        <>
          <header className={page.top}>
            <h1>{words.choose}</h1>
          </header>
          {at.station === '' ? (
            <Note kind="no">{words.noStation}</Note>
          ) : (
            <Choose station={at.station} onChoose={go} />
          )}
        </>
      ) : (
        <>
          <h1 className="visually-hidden">{words.heading}</h1>
          <LabelPanel
            key={at.ingredient}
            stationId={at.station}
            ingredient={at.ingredient}
            onDone={() => go(null)}
          />
        </>
      )}
    </main>
  )
}

/** Labels by themselves: which one, then its panel. */
export function LabelScreen() {
  return (
    <LabelFormWordsProvider>
      <Screen />
    </LabelFormWordsProvider>
  )
}
