import CoilsideCore
import Foundation

/// Carries what the core wants sent to the office, and its answers back. What to send, when to repeat and what an answer means is
/// the core's to say.
public actor Sender {
    /// The pause while there is work to do, milliseconds.
    static let pauseShortMs: Int64 = 200
    /// The longest pause, milliseconds.
    static let pauseLongMs: Int64 = 5000

    private let door: DoorQueue
    private let transport: any Transport
    private let signer: any Signer
    private var link = Link.unmetered
    private var windowEndMs: Int64?
    private var loop: Task<Void, Never>?
    private var sleep: Task<Void, Never>?
    private var woken = false
    /// Answers that came and that the core has not taken yet.
    private var taking = 0

    init(door: DoorQueue, transport: any Transport, signer: any Signer) {
        self.door = door
        self.transport = transport
        self.signer = signer
    }

    /// Sends from now on, for as long as the process lives.
    public func start() {
        guard loop == nil else { return }
        transport.listen { [weak self] answer in
            guard let self else { return }
            Task { await self.heard(answer) }
        }
        loop = Task { [weak self] in await self?.run() }
    }

    /// Ends sending.
    public func stop() {
        loop?.cancel()
        sleep?.cancel()
        loop = nil
    }

    /// Something new waits: looks at once.
    public func hurry() {
        woken = true
        sleep?.cancel()
    }

    /// What carries requests now.
    public func carried(by link: Link) {
        guard self.link != link else { return }
        self.link = link
        hurry()
    }

    /// The system gives the app so long in the background, milliseconds; none where it is before the person's eyes.
    public func window(_ ms: Int64?) {
        windowEndMs = ms.map { door.now().utcMs + $0 }
        hurry()
    }

    /// Hands out what can go now, in a short span that the system gives: returns when every answer that came is taken and nothing more
    /// is to be begun.
    public func once() async {
        while taking > 0 { await Task.yield() }
        _ = await begin()
    }

    private func run() async {
        var pause = Self.pauseShortMs
        while !Task.isCancelled {
            // Where the core cannot take an answer now it hands the request out again: the office takes it twice without harm.
            let any = await begin()
            let early = await rest(pause)
            pause = any || early ? Self.pauseShortMs : min(pause * 2, Self.pauseLongMs)
        }
    }

    /// Begins what the core wants sent now. Returns whether there was anything.
    private func begin() async -> Bool {
        await sign()
        let network = CoilsideCore.Network(link: link, windowMs: windowEndMs.map { max(0, $0 - door.now().utcMs) }, office: false)
        guard let requests = try? await door.call({ try $0.nextRequests(network: network, now: $1) }) else { return false }
        for request in requests { transport.carry(request) }
        return !requests.isEmpty
    }

    /// What is to be signed comes before anything else. A key that is locked now is asked again at the next look.
    private func sign() async {
        guard let asked = try? await door.call({ door, _ in door.nextSign() }), let bytes = try? await signer.sign(asked.bytes) else { return }
        let signature = bytes.base64EncodedString()
        try? await door.call { door, _ in try door.signed(id: asked.id, signatureBase64: signature) }
    }

    private func heard(_ answer: Answer) async {
        taking += 1
        try? await door.call { door, now in
            try door.answered(requestId: answer.id, status: answer.status, headers: answer.headers, body: answer.body, now: now)
        }
        taking -= 1
        hurry()
    }

    /// Rests, or less where something new waits. Returns whether it was less.
    private func rest(_ ms: Int64) async -> Bool {
        if !woken {
            let sleep = Task { _ = try? await Task.sleep(nanoseconds: UInt64(ms) * 1_000_000) }
            self.sleep = sleep
            await sleep.value
        }
        defer { woken = false }
        return woken
    }
}
