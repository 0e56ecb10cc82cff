import { randomUUID } from 'node:crypto'

/** Ids that a change can be aimed at. */
export interface Aims {
  readonly householdId: string
  readonly personId: string
  readonly inviteId: string
  readonly kitchenId: string
  readonly burnerId: string
  readonly kettleId: string
  readonly cannerId: string
  readonly supplyId: string
  readonly recipeId: string
  readonly dayId: string
  readonly preparationId: string
  readonly pledgeId: string
  readonly purchaseId: string
  /** A receipt that was ticked on the shopping list. */
  readonly tickId: string
  readonly packId: string
  readonly movementId: string
  readonly equipmentId: string
  /** A piece of equipment that the day carries already. */
  readonly chargedId: string
  readonly markId: string
  readonly importId: string
  readonly leftOverId: string
  readonly batchId: string
  readonly loadId: string
  readonly jarId: string
  readonly lotId: string
  readonly lidLotId: string
}

/** Who may: o organiser, l station lead, p operator, m household member, h helper, v visitor. */
export interface CommandDoor {
  /** Whoever is not named here is refused whatever they send. */
  readonly any: string
  /** Those who may for their own household alone. */
  readonly own?: string
  readonly input: (aims: Aims) => Record<string, unknown>
}

const kitchen = {
  name: 'Second kitchen',
  elevation: 650,
  elevationUnit: 'ft',
  elevationSource: 'Survey map',
  opensAt: '08:00',
  closesAt: '23:00',
  headcountLimit: 10,
  rackJars: 40,
}
const burner = { kind: 'gas', btuPerHour: 9000 }
const kettle = { litres: 8, material: 'stainless' }
const canner = { method: 'boiling-water', pints: 9 }
const person = { name: 'Somebody' }
const household = { headcount: 2 }
const hours = {
  accessAt: '17:00',
  peopleArriveAt: '17:15',
  briefingMinutes: 15,
  firstLoadAt: '18:00',
  cannersEmptyBy: '21:35',
  cleanUpMinutes: 40,
  hardEnd: '22:15',
}
const ownRecipe = {
  ...{ title: 'Damson sauce', comesFrom: 'A shoebox', pattern: 'plum', item1: 'damsons', amount1: '4 1/2', unit1: 'lb', pack: 'hot' },
  ...{ prepBefore: 'cook', kettleUse: 'cook', acidFood: 'yes', scaling: 'whole-batches-only', usualJar: 'pint' },
  ...{ 'low-pint': 4, 'typical-pint': 5, 'high-pint': 6, prepMinutes: 30, kettleMinutes: 40, fillMinutes: 6 },
}
const day = { name: 'Another evening', date: '2027-09-02', ...hours }
const at = '18:30'

let made = 0
/** A name that nothing has yet: what is tried with one role must not stand in the way of the next. */
const unused = (start: string) => `${start}${++made}`

/** Every change, who may make it, and an input that is well formed. Written apart from the policy table. */
export const COMMAND_DOORS: Readonly<Record<string, CommandDoor>> = {
  'edit-group': { any: 'o', input: () => ({ name: 'Renamed', timeZone: 'America/New_York', askLine: 'At the hall' }) },
  'add-household': { any: 'o', input: () => ({ ...household, name: unused('House ') }) },
  'edit-household': { any: 'o', own: 'lpm', input: ({ householdId }) => ({ householdId, ...household, name: unused('House ') }) },
  'remove-household': { any: 'o', input: ({ householdId }) => ({ householdId }) },
  'add-person': { any: 'o', own: 'lpm', input: ({ householdId }) => ({ householdId, ...person }) },
  'edit-person': { any: 'o', own: 'lpm', input: ({ personId }) => ({ personId, ...person }) },
  'change-person-role': { any: 'o', input: ({ personId }) => ({ personId, role: 'helper' }) },
  'set-person-active': { any: 'o', input: ({ personId }) => ({ personId, active: 'yes' }) },
  'invite-person': { any: 'o', input: ({ householdId }) => ({ householdId, role: 'member', days: 7 }) },
  'revoke-invite': { any: 'o', input: ({ inviteId }) => ({ inviteId }) },

  'add-kitchen': { any: 'o', input: () => ({ ...kitchen, name: unused('Kitchen ') }) },
  'edit-kitchen': { any: 'o', input: ({ kitchenId }) => ({ kitchenId, ...kitchen, name: unused('Kitchen ') }) },
  'add-burner': { any: 'o', input: ({ kitchenId }) => ({ kitchenId, ...burner, label: unused('N') }) },
  'edit-burner': { any: 'o', input: ({ burnerId }) => ({ burnerId, ...burner, label: unused('N') }) },
  'add-kettle': { any: 'o', input: ({ kitchenId }) => ({ kitchenId, ...kettle, label: unused('N') }) },
  'edit-kettle': { any: 'o', input: ({ kettleId }) => ({ kettleId, ...kettle, label: unused('N') }) },
  'add-canner': { any: 'o', input: ({ kitchenId }) => ({ kitchenId, ...canner, label: unused('N') }) },
  'edit-canner': { any: 'o', input: ({ cannerId }) => ({ cannerId, ...canner, label: unused('N') }) },
  'add-supply': { any: 'ol', input: ({ householdId }) => ({ kind: 'lid', lotCode: unused('LID-'), count: 12, householdId }) },
  'note-jars': { any: 'ol', input: ({ householdId }) => ({ householdId, kind: 'came-back-empty', jarSize: 'pint', jars: 3 }) },
  'take-back-jars': { any: 'ol', input: ({ movementId }) => ({ movementId }) },
  'change-supply': { any: 'ol', input: ({ supplyId }) => ({ supplyId, version: 1, count: 3 }) },

  'add-own-recipe': { any: 'ol', input: () => ownRecipe },
  'change-own-recipe': { any: 'ol', input: ({ recipeId }) => ({ recipeId, version: 1, ...ownRecipe }) },
  'bind-own-recipe': {
    any: 'ol',
    input: ({ recipeId, kitchenId }) => ({ recipeId, version: 1, foodId: 'plums', canner: 'boiling-water', kitchenId }),
  },
  'confirm-condition': {
    any: 'o',
    input: ({ recipeId }) => ({ recipeId, version: 1, condition: 'same-pack', statement: 'It goes into the jars as a hot pack.' }),
  },
  'withdraw-condition': {
    any: 'ol',
    input: ({ recipeId }) => ({ recipeId, condition: 'same-pack', statement: 'It goes into the jars as a hot pack.' }),
  },
  'retire-own-recipe': { any: 'ol', input: ({ recipeId }) => ({ recipeId, retired: 'no' }) },

  'create-day': { any: 'o', input: ({ kitchenId }) => ({ kitchenId, ...day }) },
  'edit-day': { any: 'o', input: ({ dayId, kitchenId }) => ({ dayId, version: 1, kitchenId, ...day }) },
  'choose-recipe': {
    any: 'o',
    input: ({ dayId }) => ({ dayId, recipeId: 'plum-jam', jarSize: 'pint', method: 'boiling-water', offered: 8 }),
  },
  'change-offer': { any: 'o', input: ({ preparationId }) => ({ preparationId, offered: 60 }) },
  'change-jar-treatment': { any: 'o', input: ({ preparationId }) => ({ preparationId, jarTreatment: 'washed-hot' }) },
  'drop-recipe': { any: 'o', input: ({ preparationId }) => ({ preparationId }) },
  'open-claims': { any: 'o', input: ({ dayId }) => ({ dayId }) },
  'close-claims': { any: 'o', input: ({ dayId }) => ({ dayId }) },
  'claim-jars': { any: 'o', own: 'lpm', input: ({ householdId, preparationId }) => ({ householdId, preparationId, jars: 1 }) },
  'wait-for-jars': { any: 'o', own: 'lpm', input: ({ householdId, preparationId }) => ({ householdId, preparationId, jars: 1 }) },
  'offer-split': {
    any: 'o',
    own: 'lpm',
    input: ({ householdId, preparationId }) => ({ householdId, preparationId, toHouseholdId: 'nobody', jars: 1 }),
  },
  'answer-split': { any: 'o', own: 'lpm', input: ({ householdId, dayId }) => ({ splitId: dayId, householdId, answer: 'accept' }) },
  'withdraw-split': { any: 'o', own: 'lpm', input: ({ householdId, dayId }) => ({ splitId: dayId, householdId }) },
  'set-claim-window': { any: 'o', input: ({ dayId }) => ({ dayId, version: 1, householdCap: 20 }) },
  'set-offer-cap': { any: 'o', input: ({ preparationId }) => ({ preparationId, householdCap: 20 }) },
  'ask-rule-change': { any: 'o', input: ({ dayId }) => ({ dayId, shareRule: 'equal' }) },
  'answer-rule-change': {
    any: 'o',
    own: 'lpm',
    input: ({ householdId, dayId }) => ({ ruleChangeId: dayId, householdId, answer: 'agree' }),
  },
  'withdraw-rule-change': { any: 'o', input: ({ dayId }) => ({ ruleChangeId: dayId }) },
  'add-pledge': {
    any: 'o',
    own: 'lpmh',
    input: ({ dayId, householdId }) => ({ dayId, householdId, kind: 'hours', item: 'Hands', quantity: 2, unit: 'h' }),
  },
  'remove-pledge': { any: 'o', own: 'lpmh', input: ({ pledgeId }) => ({ pledgeId }) },
  'plan-day': { any: 'o', input: ({ dayId }) => ({ dayId }) },
  'take-search': { any: 'o', input: ({ dayId }) => ({ dayId, searchId: dayId }) },
  'start-day': { any: 'o', input: ({ dayId }) => ({ dayId }) },
  'cancel-day': { any: 'o', input: ({ dayId }) => ({ dayId }) },

  'receive-ingredients': { any: 'ol', input: ({ dayId }) => ({ dayId, item: 'plums', quantity: 3, unit: 'lb', source: 'Market' }) },
  'start-batch': { any: 'olp', input: ({ dayId, batchId, kettleId, lotId }) => ({ dayId, at, batchId, kettleId, lotIds: [lotId] }) },
  'start-filling': { any: 'olp', input: ({ dayId, batchId }) => ({ dayId, at, batchId }) },
  'fill-batch': { any: 'olp', input: ({ dayId, batchId, lidLotId }) => ({ dayId, at, batchId, jars: 8, lidLotId }) },
  'abandon-batch': { any: 'olp', input: ({ dayId, batchId }) => ({ dayId, at, batchId, why: 'Burned' }) },
  'set-jars-aside': { any: 'olp', input: ({ dayId, batchId }) => ({ dayId, at, batchId, way: 'fridge' }) },
  'load-canner': { any: 'op', input: ({ dayId, loadId, batchId }) => ({ dayId, at, loadId, batchIds: [batchId] }) },
  'reached-temperature': { any: 'op', input: ({ dayId, loadId }) => ({ dayId, at, loadId }) },
  'lost-temperature': { any: 'op', input: ({ dayId, loadId }) => ({ dayId, at, loadId }) },
  'relieve-operator': { any: 'op', input: ({ dayId, loadId, personId }) => ({ dayId, at, loadId, operatorId: personId }) },
  'finish-process': { any: 'op', input: ({ dayId, loadId }) => ({ dayId, at, loadId }) },
  'empty-canner': { any: 'op', input: ({ dayId, loadId }) => ({ dayId, at, loadId }) },
  'fail-load': { any: 'op', input: ({ dayId, loadId }) => ({ dayId, at, loadId, way: 'fridge', why: 'No heat' }) },
  'note-broken-jar': { any: 'olph', input: ({ dayId, jarId }) => ({ dayId, at, jarId, where: 'On the rack' }) },
  'note-incident': { any: 'olpmh', input: ({ dayId }) => ({ dayId, at, what: 'A wet floor' }) },
  'rest-day': { any: 'o', input: ({ dayId }) => ({ dayId, at }) },

  'replan-day': { any: 'o', input: ({ dayId }) => ({ dayId, basedOn: 1 }) },
  'undo-plan': { any: 'o', input: ({ dayId }) => ({ dayId, basedOn: 1 }) },
  'lock-task': {
    any: 'o',
    input: ({ dayId, preparationId }) => ({ dayId, preparationId, batch: 1, task: 'cook', at: '18:30' }),
  },
  'unlock-task': { any: 'o', input: ({ dayId }) => ({ dayId, lockId: 'absent' }) },
  'note-setback': { any: 'olpmh', input: ({ dayId, cannerId }) => ({ dayId, kind: 'canner-out', cannerId, from: at }) },
  'clear-setback': { any: 'olpmh', input: ({ dayId }) => ({ dayId, setbackId: 'absent' }) },
  'see-plan-changes': { any: 'olpmh', input: ({ dayId }) => ({ dayId, number: 1 }) },

  'check-seals': { any: 'olp', input: ({ dayId, loadId }) => ({ dayId, at, on: '2027-08-27', loadId }) },
  'award-jars': { any: 'o', input: ({ dayId }) => ({ dayId }) },
  'give-left-jars': {
    any: 'o',
    input: ({ dayId, preparationId, householdId }) => ({ dayId, preparationId, householdId, jars: 1 }),
  },
  'set-pick-up': { any: 'ol', input: ({ dayId }) => ({ dayId, place: 'The hall', until: '2027-09-12', contact: 'Ada' }) },
  'release-jars': { any: 'o', input: ({ dayId, householdId }) => ({ dayId, householdId }) },
  'wish-own-glass': { any: 'o', own: 'lpm', input: ({ dayId, householdId }) => ({ dayId, householdId, wish: 'yes' }) },
  'name-own-glass': { any: 'ol', input: ({ dayId, householdId }) => ({ dayId, householdId, jars: 'J1-01' }) },
  'hand-over': { any: 'ol', input: ({ dayId, householdId }) => ({ dayId, householdId }) },
  'close-day': {
    any: 'o',
    input: ({ dayId }) => ({ dayId, lidsAtStart: 88, lidsLeft: 8, bandsAtStart: 95, bandsReturned: 95, note: 'Counted twice' }),
  },
  'add-purchase': {
    any: 'o',
    input: ({ dayId, householdId }) => ({ dayId, householdId, item: 'sugar', packs: 1, pack: '4 lb bag', cost: '3.60' }),
  },
  'remove-purchase': { any: 'o', input: ({ dayId, purchaseId }) => ({ dayId, purchaseId }) },

  'add-pack': { any: 'o', input: () => ({ item: 'sugar', label: unused('Bag '), holds: 10, unit: 'us-cup', price: '3.60' }) },
  'edit-pack': { any: 'o', input: ({ packId }) => ({ packId, holds: 10, unit: 'us-cup', isShort: 'yes' }) },
  'remove-pack': { any: 'o', input: ({ packId }) => ({ packId }) },
  'assign-errand': {
    any: 'o',
    own: 'lpmh',
    input: ({ dayId, householdId }) => ({ dayId, householdId, item: unused('thing '), run: 'Mill Street' }),
  },
  'buy-item': {
    any: 'o',
    own: 'lpmh',
    input: ({ dayId, householdId }) => ({
      ...{ dayId, householdId, item: 'sugar', purchaseId: randomUUID(), packs: 5, pack: '4 lb bag', cost: '18.00' },
      ...{ holds: 10, unit: 'us-cup' },
    }),
  },
  'put-back': { any: 'o', own: 'lpmh', input: ({ dayId, tickId }) => ({ dayId, purchaseId: tickId }) },
  'cover-item': {
    any: 'o',
    input: ({ dayId, purchaseId }) => ({ dayId, purchaseId, item: 'sugar', covers: 10, unit: 'us-cup' }),
  },
  'keep-left-over': {
    any: 'o',
    input: ({ dayId, householdId }) => ({ dayId, householdId, item: 'sugar', amount: 4, unit: 'us-cup' }),
  },
  'use-up-left-over': { any: 'o', input: ({ leftOverId }) => ({ leftOverId }) },

  'set-money-rule': { any: 'o', input: ({ dayId }) => ({ dayId, labourRule: 'surcharge', leastHours: 4, percent: 25 }) },
  'count-hours': { any: 'o', input: ({ dayId, householdId }) => ({ dayId, householdId, hours: 3.5 }) },
  'add-equipment': {
    any: 'o',
    input: ({ householdId }) => ({ householdId, name: unused('Canner '), price: '89.00', years: 20, daysAYear: 4 }),
  },
  'charge-equipment': { any: 'o', input: ({ dayId, equipmentId }) => ({ dayId, equipmentId }) },
  'uncharge-equipment': { any: 'o', input: ({ dayId, chargedId }) => ({ dayId, equipmentId: chargedId }) },
  'mark-payment': {
    any: 'o',
    own: 'lpm',
    input: ({ dayId, householdId }) => ({ dayId, fromId: householdId, toId: 'fund', amount: 1234, side: 'paid' }),
  },
  'undo-mark': { any: 'o', own: 'lpm', input: ({ dayId, markId }) => ({ dayId, markId }) },

  'read-import': { any: 'o', input: () => ({ kind: 'households', name: 'names.csv', text: `Name,People\r\n${unused('File ')},3\r\n` }) },
  'enter-import': { any: 'o', input: ({ importId }) => ({ importId }) },
}
