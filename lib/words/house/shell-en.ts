/** What the commands of the shell say. */
export const drive = {
  usage: (roles: string) =>
    `npm run -s drive -- --url http://127.0.0.1:4321 --role ROLE\nROLE is one of: ${roles}`,
  noServer: (url: string) => `No Level Scoop server answers at ${url}.`,
} as const

export const log = {
  usage: 'npm run -s log -- --data DIR [--service ID] [--fold] [--as ROLE] [--upto POSITION]',
  noLog: (folder: string) => `There is no log in ${folder}.`,
} as const
