import CoilsideCore
import Foundation

/// Begins what the core asks for, each request once, and tells the core how it ended.
@MainActor
final class EffectRunner {
    weak var session: Session?
    private let photos: Photos
    private let alarms: Alarms
    private let place: any PlaceSource
    private let signer: any Signer
    private let packs: URL?
    /// Requests that were begun, so that one handed out again is not begun twice.
    private var begun: Set<String> = []

    /// How many requests are being done.
    private(set) var underWay = 0

    /// How long a fix may take, milliseconds.
    static let patienceMs: Int64 = 20_000

    init(photos: Photos, alarms: Alarms, place: any PlaceSource, signer: any Signer, packs: URL?) {
        self.photos = photos
        self.alarms = alarms
        self.place = place
        self.signer = signer
        self.packs = packs
    }

    func begin(_ effect: Effect) {
        let id = effect.id
        switch effect.request {
        case .wakeAt(let utcMs, let text):
            alarms.set(Alarm(id: id, atUtcMs: utcMs, text: text))
        case .readPacks:
            // It has no outcome and always the same id: it is done as often as it is asked.
            guard let packs else { return }
            underWay += 1
            Task { [weak self] in
                let folders = await Task.detached { PackShelf.all(in: packs) }.value
                await self?.session?.packs(folders)
                self?.underWay -= 1
            }
        case .takePhoto(let unit, let slot, let title, let show):
            if begun.insert(id).inserted {
                photos.want(Wanted(id: id, unit: unit, slot: slot, title: title, show: show))
            }
        case .locate:
            if begun.insert(id).inserted { end(id) { await Self.locate(self.place, self.words) } }
        case .signBytes(let bytesBase64):
            if begun.insert(id).inserted { end(id) { [signer] in await Self.sign(bytesBase64, signer) } }
        }
    }

    private var words: Words { session?.words ?? Words() }

    private func end(_ id: String, _ work: @escaping @MainActor () async -> Outcome) {
        underWay += 1
        Task { [weak self] in
            let outcome = await work()
            self?.session?.done(id, outcome)
            self?.underWay -= 1
        }
    }

    static func locate(_ place: any PlaceSource, _ words: Words) async -> Outcome {
        do {
            return .place(place: try await place.fix(withinMs: patienceMs))
        } catch PlaceProblem.denied {
            return .failed(why: words("shell-place-refused"))
        } catch PlaceProblem.late {
            return .failed(why: words("shell-place-late"))
        } catch {
            return .failed(why: words("shell-place-none"))
        }
    }

    static func sign(_ base64: String, _ signer: any Signer) async -> Outcome {
        guard let bytes = Data(base64Encoded: base64) else { return .failed(why: "not base64") }
        do {
            return .signature(base64: try await signer.sign(bytes).base64EncodedString())
        } catch {
            return .failed(why: "\(error)")
        }
    }
}
