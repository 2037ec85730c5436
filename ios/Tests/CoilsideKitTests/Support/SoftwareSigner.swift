import CoilsideKit
import Foundation

struct NoKey: Error {}

/// A P-256 key of OpenSSL's in this process's memory, in place of a phone's secure hardware.
final class SoftwareSigner: Signer, @unchecked Sendable {
    private static let kindEC: Int32 = 408  // EVP_PKEY_EC
    private static let curveP256: Int32 = 415  // NID_X9_62_prime256v1
    private let key: OpaquePointer
    private let lock = NSLock()

    init() throws {
        let context = LibCrypto.newContextOf(Self.kindEC, nil)
        defer { LibCrypto.freeContext(context) }
        var made: OpaquePointer?
        guard LibCrypto.keygenInit(context) == 1, LibCrypto.setCurve(context, Self.curveP256) == 1,
            LibCrypto.keygen(context, &made) == 1, let made
        else { throw NoKey() }
        key = made
    }

    deinit { LibCrypto.freeKey(key) }

    func publicKey() throws -> Data {
        var bytes: UnsafeMutablePointer<UInt8>?
        let count = LibCrypto.publicHalf(key, &bytes)
        guard count == 65, let bytes else { throw NoKey() }
        defer { free(bytes) }
        return Data(bytes: bytes, count: count)
    }

    func sign(_ bytes: Data) async throws -> Data { try lock.withLock { try der(bytes) } }

    private func der(_ bytes: Data) throws -> Data {
        let digest = LibCrypto.newDigest()
        defer { LibCrypto.freeDigest(digest) }
        guard LibCrypto.signInit(digest, nil, LibCrypto.sha256Kind(), nil, key) == 1 else { throw NoKey() }
        let whole = [UInt8](bytes)
        var length = 0
        guard LibCrypto.signWhole(digest, nil, &length, whole, whole.count) == 1 else { throw NoKey() }
        var signature = [UInt8](repeating: 0, count: length)
        guard LibCrypto.signWhole(digest, &signature, &length, whole, whole.count) == 1 else { throw NoKey() }
        return Data(signature.prefix(length))
    }
}
