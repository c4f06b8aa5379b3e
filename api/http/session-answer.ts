import { z } from '@hono/zod-openapi';
import { roles } from '../db/people-stores.ts';
import type { AppSettings } from './app-parts.ts';
import type { Asker } from './sign-in/who-asks.ts';

/** Who asks, as the screen needs it. */
export const sessionAnswer = z
  .object({
    signIn: z.boolean().meta({ description: 'False on the server’s own machine: nobody signs in there.' }),
    firm: z
      .string()
      .nullable()
      .meta({ description: 'The id of the asker’s firm; null: nobody is signed in.' }),
    role: z.enum(roles).nullable(),
    person: z
      .object({ id: z.string(), name: z.string(), email: z.string() })
      .nullable()
      .meta({ description: 'Null where nobody is signed in, or nobody has to be.' }),
    publicOrigin: z
      .string()
      .nullable()
      .meta({ description: 'Where others reach the server; null: at the address that is asked.' }),
  })
  .openapi('Session');

/** The answer to who asks. */
export const sessionAnswerOf = (
  asker: Asker | null,
  { signIn, publicOrigin }: AppSettings,
): z.infer<typeof sessionAnswer> => ({
  signIn,
  firm: asker?.firmId ?? null,
  role: asker?.role ?? null,
  person: asker?.account ?? null,
  publicOrigin,
});
