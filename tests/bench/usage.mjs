/** Preloaded into a measured process, and by it into those it forks: each writes what it used, at its end, to the folder BENCH_USAGE names. */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  writeFileSync(
    join(process.env.BENCH_USAGE, `${process.pid}.json`),
    JSON.stringify({
      cpuSeconds: (user + system) / 1e6,
      wallSeconds: process.uptime(),
      peakMegabytes: process.resourceUsage().maxRSS / 1024,
    }),
  );
});
