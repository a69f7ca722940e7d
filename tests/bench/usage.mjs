/** Preloaded into a measured process: writes what it used to the file that BENCH_USAGE names, at its end. */

import { writeFileSync } from 'node:fs';

process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  writeFileSync(
    process.env.BENCH_USAGE,
    JSON.stringify({
      cpuSeconds: (user + system) / 1e6,
      wallSeconds: process.uptime(),
      peakMegabytes: process.resourceUsage().maxRSS / 1024,
    }),
  );
});
