// A worker that answers when a test has it do so.

export class Worker {
  asked = [];
  ended = false;

  postMessage(said) {
    this.asked.push(said);
  }

  terminate() {
    this.ended = true;
  }

  say(said) {
    this.onmessage({ data: said });
  }
}
