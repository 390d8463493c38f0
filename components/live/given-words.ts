/** Words that a provider gave. @throws where they are asked for outside of it */
export const givenWords = <Words>(words: Words | null): Words => {
  if (words === null) throw new Error('words are asked for outside of their provider')
  return words
}
