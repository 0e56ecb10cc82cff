import type { z } from 'zod'

/**
 * The schema of each command's form, fetched when somebody begins to type: the same one that the server parses with, so they cannot disagree.
 *
 * A command without an entry here is checked by the server alone.
 */
export const FORM_SCHEMAS: Readonly<Record<string, () => Promise<z.ZodType>>> = {
  'add-household': () => import('@/shared/forms/household').then((room) => room.AddHousehold),
  'edit-household': () => import('@/shared/forms/household').then((room) => room.EditHousehold),
  'edit-group': () => import('@/shared/forms/group').then((room) => room.EditGroup),
  'add-person': () => import('@/shared/forms/person').then((room) => room.AddPerson),
  'edit-person': () => import('@/shared/forms/person').then((room) => room.EditPerson),
  'change-person-role': () => import('@/shared/forms/person').then((room) => room.ChangePersonRole),
  'invite-person': () => import('@/shared/forms/invite').then((room) => room.InvitePerson),
  'add-kitchen': () => import('@/shared/forms/kitchen').then((room) => room.AddKitchen),
  'edit-kitchen': () => import('@/shared/forms/kitchen').then((room) => room.EditKitchen),
  'add-burner': () => import('@/shared/forms/equipment').then((room) => room.AddBurner),
  'edit-burner': () => import('@/shared/forms/equipment').then((room) => room.EditBurner),
  'add-kettle': () => import('@/shared/forms/equipment').then((room) => room.AddKettle),
  'edit-kettle': () => import('@/shared/forms/equipment').then((room) => room.EditKettle),
  'add-canner': () => import('@/shared/forms/equipment').then((room) => room.AddCanner),
  'edit-canner': () => import('@/shared/forms/equipment').then((room) => room.EditCanner),
  'add-supply': () => import('@/shared/forms/supply').then((room) => room.AddSupply),
  'change-supply': () => import('@/shared/forms/supply').then((room) => room.ChangeSupply),
  'sign-in': () => import('@/shared/forms/sign-in').then((room) => room.SignIn),
  'sign-up': () => import('@/shared/forms/sign-in').then((room) => room.SignUp),
  'set-password': () => import('@/shared/forms/sign-in').then((room) => room.SetPassword),
  'mail-link': () => import('@/shared/forms/sign-in').then((room) => room.MailLink),
  'create-group': () => import('@/shared/forms/group').then((room) => room.CreateGroup),
  'accept-invite': () => import('@/shared/forms/invite').then((room) => room.AcceptInvite),
  'receive-ingredients': () => import('@/shared/forms/floor').then((room) => room.ReceiveIngredients),
  'start-batch': () => import('@/shared/forms/floor').then((room) => room.StartBatch),
  'fill-batch': () => import('@/shared/forms/floor').then((room) => room.FillBatch),
  'abandon-batch': () => import('@/shared/forms/floor').then((room) => room.AbandonBatch),
  'set-jars-aside': () => import('@/shared/forms/floor').then((room) => room.SetJarsAside),
  'load-canner': () => import('@/shared/forms/floor').then((room) => room.LoadCanner),
  'reached-temperature': () => import('@/shared/forms/floor').then((room) => room.AtLoad),
  'finish-process': () => import('@/shared/forms/floor').then((room) => room.AtLoad),
  'empty-canner': () => import('@/shared/forms/floor').then((room) => room.AtLoad),
  'lost-temperature': () => import('@/shared/forms/floor').then((room) => room.AtLoad),
  'fail-load': () => import('@/shared/forms/floor').then((room) => room.FailLoad),
  'note-broken-jar': () => import('@/shared/forms/floor').then((room) => room.NoteBrokenJar),
  'note-incident': () => import('@/shared/forms/floor').then((room) => room.NoteIncident),
  'check-seals': () => import('@/shared/forms/floor').then((room) => room.CheckSeals),
  'rest-day': () => import('@/shared/forms/floor').then((room) => room.RestDay),
  'add-purchase': () => import('@/shared/forms/share').then((room) => room.AddPurchase),
  'close-day': () => import('@/shared/forms/share').then((room) => room.CloseDay),
}
