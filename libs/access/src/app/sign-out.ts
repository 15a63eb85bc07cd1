import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { poolOf } from './authenticate.js';
import { secretHash } from './secrets.js';

@Injectable()
export class SignOut {
  constructor(private readonly dataSource: DataSource) {}

  async run(secret: string): Promise<void> {
    await poolOf(this.dataSource).query('SELECT end_session($1)', [secretHash(secret)]);
  }
}
