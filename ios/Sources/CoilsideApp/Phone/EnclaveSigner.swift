import CoilsideKit
import CryptoKit
import Foundation
import Security

/// The device's key in the Secure Enclave. The Keychain holds only what the Enclave alone can read; neither leaves the device, nor goes into
/// a backup.
final class EnclaveSigner: Signer, @unchecked Sendable {
    private static let service = "coilside.device-key"
    private let lock = NSLock()
    private var known: SecureEnclave.P256.Signing.PrivateKey?

    func publicKey() throws -> Data { try key().publicKey.x963Representation }

    func sign(_ bytes: Data) async throws -> Data { try key().signature(for: bytes).derRepresentation }

    private func key() throws -> SecureEnclave.P256.Signing.PrivateKey {
        try lock.withLock {
            if let known { return known }
            guard SecureEnclave.isAvailable else { throw SignerProblem("no Secure Enclave") }
            let key = try Self.kept().map { try SecureEnclave.P256.Signing.PrivateKey(dataRepresentation: $0) } ?? Self.make()
            known = key
            return key
        }
    }

    /// Signs also while the device is locked, once it was unlocked since its start: sending goes on in the pocket.
    private static func make() throws -> SecureEnclave.P256.Signing.PrivateKey {
        guard let how = SecAccessControlCreateWithFlags(nil, kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly, .privateKeyUsage, nil) else {
            throw SignerProblem("no Secure Enclave")
        }
        let key = try SecureEnclave.P256.Signing.PrivateKey(accessControl: how)
        var item = query
        item[kSecValueData as String] = key.dataRepresentation
        item[kSecAttrAccessible as String] = kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly
        let status = SecItemAdd(item as CFDictionary, nil)
        guard status == errSecSuccess else { throw SignerProblem("Keychain: \(status)") }
        return key
    }

    /// What the Keychain has; none only where it says that there is nothing. A Keychain that is locked never makes a second key.
    private static func kept() throws -> Data? {
        var wanted = query
        wanted[kSecReturnData as String] = true
        var found: CFTypeRef?
        let status = SecItemCopyMatching(wanted as CFDictionary, &found)
        if status == errSecItemNotFound { return nil }
        guard status == errSecSuccess, let bytes = found as? Data else { throw SignerProblem("Keychain: \(status)") }
        return bytes
    }

    private static var query: [String: Any] {
        [kSecClass as String: kSecClassGenericPassword, kSecAttrService as String: service]
    }
}
