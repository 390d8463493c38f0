/** Preloaded into a server by a test: SIGUSR2 makes a fault that nobody catches. */
process.on('SIGUSR2', () => {
  if (process.env.LEVEL_SCOOP_TEST_FAULT === 'rejection') void Promise.reject(new Error('rejected'))
  else
    setImmediate(() => {
      throw new Error('thrown')
    })
})
