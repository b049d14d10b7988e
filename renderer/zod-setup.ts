import { z } from 'zod';

// The page's content security policy forbids eval; without this zod tries it once to compile its checks.
z.config({ jitless: true });
