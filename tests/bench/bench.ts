/** Prints how fast everything is, as ratios where there is something to compare with. Slow is no failure. Run it by: npm run bench [pure|served] */
import { findChromium } from '@/lib/cli/find-chromium.mjs'
import { makeBenchData } from './bench-data'
import { finderBenches } from './finder-bench'
import { report } from './measure'
import { pureBenches } from './pure-benches'
import { claimBenches, memoryOfApp, pageBenches } from './served-benches'

const { TEST_BASE_URL: site, TEST_DATA_DIR: dataFolder } = process.env

if (!site || !dataFolder) report('On one core, without network or store', pureBenches())
else {
  const data = await makeBenchData(dataFolder)
  try {
    report('Claims, over loopback, on the cores of this machine', await claimBenches(site, data))
    report('Pages', await pageBenches(site, data))
    report('The finder on a slow phone', await finderBenches(site, await findChromium()))
    report('Memory', [await memoryOfApp(dataFolder)])
  } finally {
    await data.close()
  }
}
