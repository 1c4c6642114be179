#include "store/sqlite_practice.hpp"

namespace tracewright {

Stored<std::vector<ShareRecord>> SqlitePractice::shares(std::int64_t client) {
    return reading([&]() -> Stored<std::vector<ShareRecord>> {
        const auto at = place(client);
        const auto row = clients_.client(client);
        if (!at || !row) {
            return tl::make_unexpected(at.error());
        }
        auto shares = shares_.shares(client, *at);
        for (ShareRecord& record : shares) {
            record.share.client = row->handle;
        }
        return shares;
    });
}

Stored<std::int64_t> SqlitePractice::give_share(std::int64_t client, const Share& share,
                                                const ShareTokenHash& token, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<std::int64_t> {
        const auto at = place(client);
        if (!at) {
            return tl::make_unexpected(at.error());
        }
        Share given = share;
        given.client = clients_.client(client)->handle;
        given.given_at = acting.at;
        if (auto lacking = what_a_share_lacks(given)) {
            return store_error(StoreErrorKind::refused, std::move(*lacking));
        }
        const std::int64_t number = shares_.give(client, *at, given, token, acting);
        audit_.add(acting, "share_given", client, number);
        return number;
    });
}

Stored<void> SqlitePractice::revoke_share(std::int64_t client, std::int64_t share,
                                          const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        if (!shares_.revoke(client, share, acting)) {
            return store_error(StoreErrorKind::not_found,
                               "found no share of this number of this client that is not revoked");
        }
        audit_.add(acting, "share_revoked", client, share);
        return {};
    });
}

Stored<OpenedShare> SqlitePractice::share_opened_by(const ShareTokenHash& token) {
    return reading([&]() -> Stored<OpenedShare> {
        const auto opened = shares_.opened_by(token);
        const auto at = opened ? clients_.place_of(opened->client) : std::nullopt;
        if (!at) {
            return store_error(StoreErrorKind::not_found, "found no share that this token opens");
        }
        auto record = shares_.share(opened->share, *at);
        record->share.client = clients_.client(opened->client)->handle;
        return OpenedShare{opened->client, std::move(*record)};
    });
}

Stored<void> SqlitePractice::note_share_look(std::int64_t share, const ShareLook& look) {
    return caught([&]() -> Stored<void> {
        Transaction all_or_nothing(*database_);
        if (!shares_.note_look(share, look)) {
            return store_error(StoreErrorKind::not_found, "found no such share in this practice");
        }
        all_or_nothing.commit();
        return {};
    });
}

}  // namespace tracewright
