/** Processor time of this process so far, ms: what a check of speed may lean on while other work runs beside it. */
export function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
