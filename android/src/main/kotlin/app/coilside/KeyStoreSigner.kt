package app.coilside

import android.content.Context
import android.content.pm.PackageManager
import android.os.Build
import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyProperties
import java.security.KeyPairGenerator
import java.security.KeyStore
import java.security.PrivateKey
import java.security.ProviderException
import java.security.Signature
import java.security.interfaces.ECPublicKey
import java.security.spec.ECGenParameterSpec

/** A P-256 key that the phone's hardware makes and never gives out; the person need not be present when it signs. */
class KeyStoreSigner private constructor(private val key: PrivateKey, public: ECPublicKey) : Signer {
    override val publicKey: ByteArray = uncompressed(public)

    override fun sign(bytes: ByteArray): ByteArray = Signature.getInstance("SHA256withECDSA").run {
        initSign(key)
        update(bytes)
        sign()
    }

    companion object {
        private const val STORE = "AndroidKeyStore"
        private const val ALIAS = "device"
        private const val COORDINATE_BYTES = 32

        /** The device's key; made at the first call. */
        fun ofThisDevice(app: Context): KeyStoreSigner {
            val store = KeyStore.getInstance(STORE).apply { load(null) }
            if (!store.containsAlias(ALIAS)) make(app)
            val key = store.getKey(ALIAS, null) as PrivateKey
            return KeyStoreSigner(key, store.getCertificate(ALIAS).publicKey as ECPublicKey)
        }

        /** In the separate security chip where there is one that takes the key, else where the phone keeps keys. */
        private fun make(app: Context) {
            val chip = Build.VERSION.SDK_INT >= Build.VERSION_CODES.P &&
                app.packageManager.hasSystemFeature(PackageManager.FEATURE_STRONGBOX_KEYSTORE)
            if (chip) {
                try {
                    return make(strongBox = true)
                } catch (refused: ProviderException) {
                    // Full, of a kind that takes no such key, or out of order: the phone's ordinary store is good enough.
                }
            }
            make(strongBox = false)
        }

        private fun make(strongBox: Boolean) {
            val spec = KeyGenParameterSpec.Builder(ALIAS, KeyProperties.PURPOSE_SIGN)
                .setAlgorithmParameterSpec(ECGenParameterSpec("secp256r1"))
                .setDigests(KeyProperties.DIGEST_SHA256)
            if (strongBox && Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) spec.setIsStrongBoxBacked(true)
            KeyPairGenerator.getInstance(KeyProperties.KEY_ALGORITHM_EC, STORE).run {
                initialize(spec.build())
                generateKeyPair()
            }
        }

        /** SEC 1, uncompressed: 4, then both coordinates at their full length. */
        private fun uncompressed(key: ECPublicKey): ByteArray {
            val point = key.w
            return byteArrayOf(4) + fixed(point.affineX.toByteArray()) + fixed(point.affineY.toByteArray())
        }

        /** A number's bytes without its sign, filled up in front. */
        private fun fixed(number: ByteArray): ByteArray {
            val bare = number.dropWhile { it == 0.toByte() }.toByteArray()
            return ByteArray(COORDINATE_BYTES - bare.size) + bare
        }
    }
}
