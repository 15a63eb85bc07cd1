import { Global, Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { TypeOrmModule } from '@nestjs/typeorm';
import { Authenticate } from './app/authenticate.js';
import { ChangePerson } from './app/change-person.js';
import { ChangePractice } from './app/change-practice.js';
import { CheckFirstStart } from './app/check-first-start.js';
import { CreatePerson } from './app/create-person.js';
import { CreatePractice } from './app/create-practice.js';
import { CreateToken } from './app/create-token.js';
import { FirstStart } from './app/first-start.js';
import { GetPerson } from './app/get-person.js';
import { ListAuditEntries } from './app/list-audit-entries.js';
import { ListDentists } from './app/list-dentists.js';
import { ListPeople } from './app/list-people.js';
import { ListTokens } from './app/list-tokens.js';
import { RevokeToken } from './app/revoke-token.js';
import { SignIn } from './app/sign-in.js';
import { SignOut } from './app/sign-out.js';
import { PersonEntity } from './db/person.entity.js';
import { PracticeEntity } from './db/practice.entity.js';
import { AccessGuard } from './http/access.guard.js';
import { Admission } from './http/admission.js';
import { AuditController } from './http/audit.controller.js';
import { FirstStartController } from './http/first-start.controller.js';
import { DentistsController, PeopleController } from './http/people.controller.js';
import { PracticeController, RolesController } from './http/practice.controller.js';
import { SessionController } from './http/session.controller.js';
import { TokensController } from './http/tokens.controller.js';

/** Stands before the whole service: its guard is asked for every handler of every module. */
@Global()
@Module({
  imports: [TypeOrmModule.forFeature([PersonEntity, PracticeEntity])],
  controllers: [
    AuditController,
    DentistsController,
    FirstStartController,
    PeopleController,
    PracticeController,
    RolesController,
    SessionController,
    TokensController,
  ],
  providers: [
    { provide: APP_GUARD, useClass: AccessGuard },
    Admission,
    Authenticate,
    ChangePerson,
    ChangePractice,
    CheckFirstStart,
    CreatePerson,
    CreatePractice,
    CreateToken,
    FirstStart,
    GetPerson,
    ListAuditEntries,
    ListDentists,
    ListPeople,
    ListTokens,
    RevokeToken,
    SignIn,
    SignOut,
  ],
  exports: [CreatePerson, CreatePractice],
})
export class AccessModule {}
