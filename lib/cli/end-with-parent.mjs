/** Loaded into a server process: it ends when the process that started it has gone, even by kill -9. */
process.on('disconnect', () => process.kill(process.pid, 'SIGTERM'))
